-- The books of many shops in one PostgreSQL (15 or newer): what `clampbook export --csv` and `clampbook sheet --csv` say, a row a
-- value, with the shop that says it. Each shop's own book stays the place where figures are told; a shop is loaded whole, again and
-- again (load_rows.sql, then load_sheet.sql). Run once in an empty database or schema, then 002_views.sql.
--
-- An empty cell is an empty text; where a column is a number or a date, it is NULL.

CREATE TABLE shop (
  name text CONSTRAINT pk_shop PRIMARY KEY CONSTRAINT ck_shop_name CHECK (name <> ''),
  loaded_at timestamptz NOT NULL DEFAULT now()
);

-- Cells that a spreadsheet would run as a formula carry an apostrophe in front; off it comes, and on again on the way back.
CREATE FUNCTION from_spreadsheet(cell text) RETURNS text LANGUAGE sql IMMUTABLE PARALLEL SAFE
  RETURN CASE WHEN cell ~ '^''+[=+@\t\r＝＋－＠-]' THEN substr(cell, 2) ELSE cell END;
CREATE FUNCTION to_spreadsheet(cell text) RETURNS text LANGUAGE sql IMMUTABLE PARALLEL SAFE
  RETURN CASE WHEN cell ~ '^''*[=+@\t\r＝＋－＠-]' THEN '''' || cell ELSE cell END;

-- A machine and a source in one line, as the sheet writes them.
CREATE FUNCTION machine_title(model text, variant text) RETURNS text LANGUAGE sql IMMUTABLE PARALLEL SAFE
  RETURN model || CASE WHEN variant = '' THEN '' ELSE ', ' || variant END;
CREATE FUNCTION source_line(title text, number text, edition text, date text) RETURNS text LANGUAGE sql IMMUTABLE PARALLEL SAFE
  RETURN title || CASE WHEN number = '' THEN '' ELSE ', ' || number END
    || CASE WHEN edition = '' THEN '' ELSE ', edition ' || edition END || CASE WHEN date = '' THEN '' ELSE ', ' || date END;

-- One value of a shop, and one joint of any shop in whatever capitals, as a short key.
CREATE FUNCTION value_key(maker text, machine text, assembly text, joint text, label text, tightening text, source text, page text)
  RETURNS uuid LANGUAGE sql IMMUTABLE PARALLEL SAFE
  RETURN md5(maker || E'\x1f' || machine || E'\x1f' || assembly || E'\x1f' || joint || E'\x1f' || label || E'\x1f' || tightening
    || E'\x1f' || source || E'\x1f' || page)::uuid;
CREATE FUNCTION place_key(maker text, machine text, assembly text, joint text) RETURNS uuid LANGUAGE sql IMMUTABLE PARALLEL SAFE
  RETURN md5(lower(maker || E'\x1f' || machine || E'\x1f' || assembly || E'\x1f' || joint))::uuid;

-- A line of the export: a current value, or a joint that has none (label and tightening are empty then).
CREATE TABLE value_row (
  id bigint GENERATED ALWAYS AS IDENTITY CONSTRAINT pk_value_row PRIMARY KEY,
  shop text NOT NULL DEFAULT current_setting('clampbook.shop') CONSTRAINT fk_value_row_shop REFERENCES shop (name),
  machine_maker text NOT NULL CONSTRAINT ck_value_row_maker CHECK (machine_maker <> ''),
  machine_model text NOT NULL CONSTRAINT ck_value_row_model CHECK (machine_model <> ''),
  machine_variant text NOT NULL,
  assembly text NOT NULL CONSTRAINT ck_value_row_assembly CHECK (assembly <> ''),
  joint text NOT NULL CONSTRAINT ck_value_row_joint CHECK (joint <> ''),
  role text NOT NULL CONSTRAINT ck_value_row_role CHECK (role IN ('drain', 'fill', 'level', 'vent', 'cover', 'pump', 'filter',
    'sensor', 'flange', 'bearing', 'wheel', 'brake', 'steering', 'mount', 'other')),
  count smallint NOT NULL CONSTRAINT ck_value_row_count CHECK (count BETWEEN 1 AND 999),
  thread text NOT NULL,
  property_class text NOT NULL,
  form text NOT NULL,
  ring text NOT NULL,
  housing text NOT NULL,
  engagement_mm numeric CONSTRAINT ck_value_row_engagement CHECK (engagement_mm > 0 AND engagement_mm < 1000),
  safety_critical boolean NOT NULL,
  tightening text NOT NULL, -- as written in the source, letter for letter
  label text NOT NULL CONSTRAINT ck_value_row_label
    CHECK (label IN ('', 'maker', 'standard', 'shop', 'derived', 'practice', 'demo')),
  source_kind text NOT NULL,
  source_title text NOT NULL,
  source_number text NOT NULL,
  source_edition text NOT NULL,
  source_date text NOT NULL, -- a year, a month or a day
  page text NOT NULL,
  entered_by text NOT NULL,
  entered_on date,
  note text NOT NULL,
  value_note text NOT NULL,
  confirmed text NOT NULL,
  machine text GENERATED ALWAYS AS (machine_title(machine_model, machine_variant)) STORED,
  source text GENERATED ALWAYS AS (source_line(source_title, source_number, source_edition, source_date)) STORED,
  value uuid GENERATED ALWAYS AS (value_key(machine_maker, machine_title(machine_model, machine_variant), assembly, joint, label,
    tightening, source_line(source_title, source_number, source_edition, source_date), page)) STORED,
  place uuid GENERATED ALWAYS AS (place_key(machine_maker, machine_title(machine_model, machine_variant), assembly, joint)) STORED,
  words tsvector GENERATED ALWAYS AS (to_tsvector('simple', machine_maker || ' ' || machine_model || ' ' || machine_variant || ' '
    || assembly || ' ' || joint || ' ' || role || ' ' || thread || ' ' || note)) STORED,
  CONSTRAINT ck_value_row_figure CHECK ((label = '') = (tightening = '') AND (label = '') = (entered_on IS NULL)),
  CONSTRAINT ck_value_row_maker_source CHECK (label <> 'maker' OR (source_title <> '' AND page <> '')),
  CONSTRAINT uq_value_row UNIQUE (shop, value)
);
CREATE INDEX value_row_of_place ON value_row (place);
CREATE INDEX value_row_of_words ON value_row USING gin (words);

CREATE FUNCTION take_off_apostrophes() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  NEW.machine_maker := from_spreadsheet(NEW.machine_maker);
  NEW.machine_model := from_spreadsheet(NEW.machine_model);
  NEW.machine_variant := from_spreadsheet(NEW.machine_variant);
  NEW.assembly := from_spreadsheet(NEW.assembly);
  NEW.joint := from_spreadsheet(NEW.joint);
  NEW.property_class := from_spreadsheet(NEW.property_class);
  NEW.form := from_spreadsheet(NEW.form);
  NEW.ring := from_spreadsheet(NEW.ring);
  NEW.housing := from_spreadsheet(NEW.housing);
  NEW.tightening := from_spreadsheet(NEW.tightening);
  NEW.source_kind := from_spreadsheet(NEW.source_kind);
  NEW.source_title := from_spreadsheet(NEW.source_title);
  NEW.source_number := from_spreadsheet(NEW.source_number);
  NEW.source_edition := from_spreadsheet(NEW.source_edition);
  NEW.page := from_spreadsheet(NEW.page);
  NEW.entered_by := from_spreadsheet(NEW.entered_by);
  NEW.note := from_spreadsheet(NEW.note);
  NEW.value_note := from_spreadsheet(NEW.value_note);
  NEW.confirmed := from_spreadsheet(NEW.confirmed);
  RETURN NEW;
END $$;
-- Hardly a row has one: the others are passed by without a call.
CREATE TRIGGER value_row_apostrophes BEFORE INSERT ON value_row FOR EACH ROW
  WHEN (E'\n' || concat_ws(E'\n', NEW.machine_maker, NEW.machine_model, NEW.machine_variant, NEW.assembly, NEW.joint,
    NEW.property_class, NEW.form, NEW.ring, NEW.housing, NEW.tightening, NEW.source_kind, NEW.source_title, NEW.source_number,
    NEW.source_edition, NEW.page, NEW.entered_by, NEW.note, NEW.value_note, NEW.confirmed) ~ '\n''+[=+@\t\r＝＋－＠-]')
  EXECUTE FUNCTION take_off_apostrophes();

-- What the sheet says beside it: N·m, and the second person. The torque is that of the last step, the angle that of the last turn.
-- A sheet of another state of the book than the rows has values without a row, or misses some: both are refused when it is loaded.
CREATE TABLE value_figure (
  shop text NOT NULL,
  value uuid NOT NULL,
  newton_metres double precision,
  newton_metres_low double precision,
  newton_metres_high double precision,
  angle double precision, -- degrees
  checked_by text NOT NULL,
  checked_on date,
  CONSTRAINT pk_value_figure PRIMARY KEY (shop, value),
  CONSTRAINT fk_value_figure_row FOREIGN KEY (shop, value) REFERENCES value_row (shop, value) ON DELETE CASCADE,
  CONSTRAINT ck_value_figure_band CHECK (newton_metres_low <= newton_metres AND newton_metres <= newton_metres_high),
  CONSTRAINT ck_value_figure_check CHECK ((checked_by = '') = (checked_on IS NULL))
);

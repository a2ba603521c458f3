-- The shop's book, first layout. Migrations only go forward: a change of layout is a new file beside this one, run in
-- one transaction, and PRAGMA user_version is the number of the last file that ran.
--
-- Nothing of a value is ever overwritten. What happens to it later (checked, superseded, withdrawn) is a row of another
-- table, and the triggers at the end refuse every UPDATE and DELETE on what was once written down.
--
-- Choices of more than two words are written with OR: for IN the database makes a table of the words at every insert, which took a
-- seventh of the time of an import.

CREATE TABLE book_info (
  key TEXT NOT NULL PRIMARY KEY CONSTRAINT ck_book_info_key CHECK (length(key) > 0),
  value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE person (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CONSTRAINT ck_person_name CHECK (length(name) > 0),
  folded TEXT NOT NULL CONSTRAINT uq_person_name UNIQUE
) STRICT;

-- A document, plate or measurement that figures were taken from.
CREATE TABLE source (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CONSTRAINT ck_source_kind CHECK (length(kind) > 0),
  title TEXT NOT NULL CONSTRAINT ck_source_title CHECK (length(title) > 0),
  number TEXT NOT NULL DEFAULT '',
  edition TEXT NOT NULL DEFAULT '',
  date TEXT NOT NULL DEFAULT '',
  kept TEXT NOT NULL DEFAULT '',        -- where the document is kept
  file_digest TEXT NOT NULL DEFAULT '', -- SHA-256 of its file, where there is one
  note TEXT NOT NULL DEFAULT '',
  folded TEXT NOT NULL,                 -- title, number and edition, folded
  added_by INTEGER NOT NULL CONSTRAINT fk_source_person REFERENCES person (id),
  added_at TEXT NOT NULL CONSTRAINT ck_source_added_at CHECK (added_at GLOB '????-??-??T??:??:??Z'),
  CONSTRAINT ck_source_date CHECK (date = '' OR date GLOB '[0-9][0-9][0-9][0-9]*'),
  CONSTRAINT uq_source UNIQUE (folded)
) STRICT;

CREATE TABLE machine (
  id INTEGER PRIMARY KEY,
  maker TEXT NOT NULL CONSTRAINT ck_machine_maker CHECK (length(maker) > 0),
  model TEXT NOT NULL CONSTRAINT ck_machine_model CHECK (length(model) > 0),
  variant TEXT NOT NULL DEFAULT '',
  years TEXT NOT NULL DEFAULT '',
  code TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  folded TEXT NOT NULL CONSTRAINT uq_machine UNIQUE -- maker, model and variant, folded
) STRICT;

CREATE TABLE assembly (
  id INTEGER PRIMARY KEY,
  machine INTEGER NOT NULL CONSTRAINT fk_assembly_machine REFERENCES machine (id),
  name TEXT NOT NULL CONSTRAINT ck_assembly_name CHECK (length(name) > 0),
  note TEXT NOT NULL DEFAULT '',
  folded TEXT NOT NULL,
  CONSTRAINT uq_assembly UNIQUE (machine, folded)
) STRICT;

CREATE TABLE joint (
  id INTEGER PRIMARY KEY,
  assembly INTEGER NOT NULL CONSTRAINT fk_joint_assembly REFERENCES assembly (id),
  name TEXT NOT NULL CONSTRAINT ck_joint_name CHECK (length(name) > 0),
  role TEXT NOT NULL CONSTRAINT ck_joint_role CHECK (
    role = 'drain' OR role = 'fill' OR role = 'level' OR role = 'vent' OR role = 'cover' OR role = 'pump'
    OR role = 'filter' OR role = 'sensor' OR role = 'flange' OR role = 'bearing' OR role = 'wheel'
    OR role = 'brake' OR role = 'steering' OR role = 'mount' OR role = 'other'),
  count INTEGER NOT NULL DEFAULT 1 CONSTRAINT ck_joint_count CHECK (count BETWEEN 1 AND 999),
  thread TEXT NOT NULL DEFAULT '',         -- code of the curated thread, or empty where it is not known
  property_class TEXT NOT NULL DEFAULT '',
  form TEXT NOT NULL DEFAULT '',
  ring TEXT NOT NULL DEFAULT '',           -- material, and size where it is not the usual one: copper 18x24
  housing TEXT NOT NULL DEFAULT '',
  engagement_mm REAL CONSTRAINT ck_joint_engagement CHECK (engagement_mm > 0 AND engagement_mm < 1000),
  safety_critical INTEGER NOT NULL DEFAULT 0 CONSTRAINT ck_joint_safety CHECK (safety_critical IN (0, 1)),
  note TEXT NOT NULL DEFAULT '',
  folded TEXT NOT NULL,
  CONSTRAINT uq_joint UNIQUE (assembly, folded)
) STRICT;

CREATE TABLE value (
  id INTEGER PRIMARY KEY,
  joint INTEGER NOT NULL CONSTRAINT fk_value_joint REFERENCES joint (id),
  label TEXT NOT NULL CONSTRAINT ck_value_label
    CHECK (
      label = 'maker' OR label = 'standard' OR label = 'shop' OR label = 'derived' OR label = 'practice'
      OR label = 'demo'),
  as_written TEXT NOT NULL CONSTRAINT ck_value_as_written CHECK (length(as_written) > 0),
  source INTEGER CONSTRAINT fk_value_source REFERENCES source (id),
  page TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  confirmed TEXT NOT NULL DEFAULT '',      -- why an implausible value was taken all the same
  entered_by INTEGER NOT NULL CONSTRAINT fk_value_person REFERENCES person (id),
  entered_on TEXT NOT NULL CONSTRAINT ck_value_entered_on CHECK (entered_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  CONSTRAINT ck_value_maker_source CHECK (label <> 'maker' OR (source IS NOT NULL AND length(page) > 0))
) STRICT;
CREATE INDEX value_of_joint ON value (joint);

-- What was understood of the text: N·m and degrees, with the unit and digits that were written.
CREATE TABLE step (
  value INTEGER NOT NULL CONSTRAINT fk_step_value REFERENCES value (id),
  position INTEGER NOT NULL CONSTRAINT ck_step_position CHECK (position >= 1),
  kind TEXT NOT NULL CONSTRAINT ck_step_kind CHECK (
    kind = 'torque' OR kind = 'angle' OR kind = 'hand-tight'),
  nominal REAL NOT NULL,
  low REAL NOT NULL,
  high REAL NOT NULL,
  unit TEXT NOT NULL,
  significant INTEGER NOT NULL CONSTRAINT ck_step_significant CHECK (significant BETWEEN 1 AND 17),
  PRIMARY KEY (value, position),
  CONSTRAINT ck_step_band CHECK (low <= nominal AND nominal <= high),
  CONSTRAINT ck_step_positive CHECK (kind = 'hand-tight' OR low > 0)
) STRICT, WITHOUT ROWID;

-- A second person keyed the figure again from the source and it agreed.
CREATE TABLE value_check (
  value INTEGER NOT NULL CONSTRAINT pk_value_check PRIMARY KEY CONSTRAINT fk_value_check_value REFERENCES value (id),
  as_written TEXT NOT NULL CONSTRAINT ck_value_check_text CHECK (length(as_written) > 0),
  checked_by INTEGER NOT NULL CONSTRAINT fk_value_check_person REFERENCES person (id),
  checked_on TEXT NOT NULL CONSTRAINT ck_value_check_on CHECK (checked_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
) STRICT;

-- A value that is no longer current, and why.
CREATE TABLE value_end (
  value INTEGER NOT NULL CONSTRAINT pk_value_end PRIMARY KEY CONSTRAINT fk_value_end_value REFERENCES value (id),
  standing TEXT NOT NULL CONSTRAINT ck_value_end_standing CHECK (standing IN ('superseded', 'withdrawn')),
  by_value INTEGER CONSTRAINT fk_value_end_by REFERENCES value (id),
  reason TEXT NOT NULL CONSTRAINT ck_value_end_reason CHECK (length(reason) > 0),
  ended_by INTEGER NOT NULL CONSTRAINT fk_value_end_person REFERENCES person (id),
  ended_on TEXT NOT NULL CONSTRAINT ck_value_end_on CHECK (ended_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  CONSTRAINT ck_value_end_by CHECK ((standing = 'superseded') = (by_value IS NOT NULL))
) STRICT;

-- Everything that was ever told to the book, in order. Each line's hash covers the line before it; book_info keeps how
-- many lines there are and the last hash, so that a missing last line shows too.
CREATE TABLE event (
  seq INTEGER PRIMARY KEY,
  at TEXT NOT NULL CONSTRAINT ck_event_at CHECK (at GLOB '????-??-??T??:??:??Z'),
  person TEXT NOT NULL,
  kind TEXT NOT NULL CONSTRAINT ck_event_kind CHECK (length(kind) > 0),
  joint INTEGER CONSTRAINT fk_event_joint REFERENCES joint (id),
  value INTEGER CONSTRAINT fk_event_value REFERENCES value (id),
  detail TEXT NOT NULL CONSTRAINT ck_event_detail CHECK (detail GLOB '{*}'),
  previous TEXT NOT NULL CONSTRAINT ck_event_previous CHECK (length(previous) = 64),
  hash TEXT NOT NULL CONSTRAINT ck_event_hash CHECK (length(hash) = 64)
) STRICT;
CREATE INDEX event_of_joint ON event (joint);

-- Folded words of each joint; the row number is the joint's.
CREATE VIRTUAL TABLE joint_words USING fts5 (machine, assembly, joint, role, thread, note, tokenize = 'unicode61', prefix = '2 3');
-- The words themselves, each once, for what a word that was cut short may stand for: to come from one word to the next, the index
-- reads every place of the first.
CREATE TABLE vocabulary (
  word TEXT NOT NULL PRIMARY KEY CONSTRAINT ck_vocabulary_word CHECK (length(word) > 0)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER value_is_kept BEFORE UPDATE ON value
  BEGIN SELECT raise(ABORT, 'a value is never changed: it is superseded by another'); END;
CREATE TRIGGER value_stays BEFORE DELETE ON value
  BEGIN SELECT raise(ABORT, 'a value is never deleted: it is withdrawn with a reason'); END;
CREATE TRIGGER step_is_kept BEFORE UPDATE ON step
  BEGIN SELECT raise(ABORT, 'a step belongs to a value and is never changed'); END;
CREATE TRIGGER step_stays BEFORE DELETE ON step
  BEGIN SELECT raise(ABORT, 'a step belongs to a value and is never deleted'); END;
CREATE TRIGGER value_check_is_kept BEFORE UPDATE ON value_check
  BEGIN SELECT raise(ABORT, 'a check is never changed'); END;
CREATE TRIGGER value_check_stays BEFORE DELETE ON value_check
  BEGIN SELECT raise(ABORT, 'a check is never deleted'); END;
CREATE TRIGGER value_end_is_kept BEFORE UPDATE ON value_end
  BEGIN SELECT raise(ABORT, 'the end of a value is never changed'); END;
CREATE TRIGGER value_end_stays BEFORE DELETE ON value_end
  BEGIN SELECT raise(ABORT, 'the end of a value is never deleted'); END;
CREATE TRIGGER source_is_kept BEFORE UPDATE ON source
  BEGIN SELECT raise(ABORT, 'a source is never changed: values cite it; add the new edition as another'); END;
CREATE TRIGGER source_stays BEFORE DELETE ON source
  BEGIN SELECT raise(ABORT, 'a source is never deleted: values cite it'); END;
CREATE TRIGGER person_is_kept BEFORE UPDATE ON person
  BEGIN SELECT raise(ABORT, 'a person is never changed: the name stands behind what was entered'); END;
CREATE TRIGGER person_stays BEFORE DELETE ON person
  BEGIN SELECT raise(ABORT, 'a person is never deleted: the name stands behind what was entered'); END;
CREATE TRIGGER event_is_kept BEFORE UPDATE ON event
  BEGIN SELECT raise(ABORT, 'an event is never changed'); END;
CREATE TRIGGER event_stays BEFORE DELETE ON event
  BEGIN SELECT raise(ABORT, 'an event is never deleted'); END;

-- INSERT OR REPLACE deletes without firing a DELETE trigger; these refuse it before it comes to that.
CREATE TRIGGER value_is_not_replaced BEFORE INSERT ON value WHEN EXISTS (SELECT 1 FROM value WHERE id = NEW.id)
  BEGIN SELECT raise(ABORT, 'a value is never replaced: it is superseded by another'); END;
CREATE TRIGGER step_is_not_replaced BEFORE INSERT ON step
  WHEN EXISTS (SELECT 1 FROM step WHERE value = NEW.value AND position = NEW.position)
  BEGIN SELECT raise(ABORT, 'a step belongs to a value and is never replaced'); END;
CREATE TRIGGER value_check_is_not_replaced BEFORE INSERT ON value_check
  WHEN EXISTS (SELECT 1 FROM value_check WHERE value = NEW.value)
  BEGIN SELECT raise(ABORT, 'a check is never replaced'); END;
CREATE TRIGGER value_end_is_not_replaced BEFORE INSERT ON value_end
  WHEN EXISTS (SELECT 1 FROM value_end WHERE value = NEW.value)
  BEGIN SELECT raise(ABORT, 'the end of a value is never replaced'); END;
CREATE TRIGGER source_is_not_replaced BEFORE INSERT ON source
  WHEN EXISTS (SELECT 1 FROM source WHERE id = NEW.id OR folded = NEW.folded)
  BEGIN SELECT raise(ABORT, 'a source is never replaced: values cite it; add the new edition as another'); END;
CREATE TRIGGER person_is_not_replaced BEFORE INSERT ON person
  WHEN EXISTS (SELECT 1 FROM person WHERE id = NEW.id OR folded = NEW.folded)
  BEGIN SELECT raise(ABORT, 'a person is never replaced: the name stands behind what was entered'); END;
CREATE TRIGGER event_is_not_replaced BEFORE INSERT ON event WHEN EXISTS (SELECT 1 FROM event WHERE seq = NEW.seq)
  BEGIN SELECT raise(ABORT, 'an event is never replaced'); END;

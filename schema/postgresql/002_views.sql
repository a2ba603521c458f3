-- What a chain of shops asks. Search: SELECT ... FROM current_value WHERE words @@ websearch_to_tsquery('simple', 'drain plug').

CREATE VIEW current_value AS
  SELECT r.shop, r.machine_maker, r.machine, r.assembly, r.joint, r.role, r.count, r.thread, r.property_class, r.ring, r.housing,
    r.safety_critical, r.tightening, f.newton_metres, f.newton_metres_low, f.newton_metres_high, f.angle, r.label, f.checked_by,
    f.checked_on, r.source, r.page, r.entered_by, r.entered_on, r.note, r.value_note, r.words, r.place, r.value, r.id
  FROM value_row r LEFT JOIN value_figure f USING (shop, value)
  WHERE r.label <> '';

-- Do two figures agree? Their bands of torque are no further apart than 2 %, and the angle is the same. 2 % is ours: 24 lbf·ft beside
-- 33 N·m is rounding. Within a shop `clampbook conflicts` tells to the last digit that was written.
CREATE FUNCTION agrees(a current_value, b current_value) RETURNS boolean LANGUAGE sql IMMUTABLE PARALLEL SAFE
  RETURN (a).angle IS NOT DISTINCT FROM (b).angle AND CASE
    WHEN (a).newton_metres IS NULL OR (b).newton_metres IS NULL THEN (a).newton_metres IS NOT DISTINCT FROM (b).newton_metres
    ELSE (a).newton_metres_low <= 1.02 * (b).newton_metres_high AND (b).newton_metres_low <= 1.02 * (a).newton_metres_high END;

-- Two shops that tell the same joint otherwise: a figure of one with which no figure of the other agrees, beside each that the other
-- has. Where both keep the same two figures, they are of one mind.
CREATE VIEW disagreement AS
  SELECT a.machine_maker, a.machine, a.assembly, a.joint,
    a.shop, a.tightening, a.newton_metres, a.label, a.source, a.page,
    b.shop AS other_shop, b.tightening AS other_tightening, b.newton_metres AS other_newton_metres, b.label AS other_label,
    b.source AS other_source, b.page AS other_page
  FROM current_value a JOIN current_value b ON b.place = a.place AND b.shop > a.shop
  WHERE NOT agrees(a, b)
    AND (NOT EXISTS (SELECT FROM current_value o WHERE o.place = a.place AND o.shop = b.shop AND agrees(a, o))
      OR NOT EXISTS (SELECT FROM current_value o WHERE o.place = b.place AND o.shop = a.shop AND agrees(o, b)));

-- Joints for which a shop has no figure, and another has one; `id` is that of the other's row.
CREATE VIEW known_elsewhere AS
  SELECT lacking.shop AS lacking_shop, v.shop, v.machine_maker, v.machine, v.assembly, v.joint, v.tightening, v.newton_metres, v.label,
    v.source, v.page, v.id
  FROM value_row lacking JOIN current_value v ON v.place = lacking.place AND v.shop <> lacking.shop
  WHERE lacking.label = '';

-- Rows as a file that `clampbook import` takes: COPY (SELECT * FROM exchange_rows(ARRAY(SELECT id FROM ...))) TO STDOUT (FORMAT csv, HEADER).
CREATE FUNCTION exchange_rows(ids bigint[]) RETURNS TABLE (machine_maker text, machine_model text, machine_variant text,
  assembly text, joint text, role text, count smallint, thread text, property_class text, form text, ring text, housing text,
  engagement_mm numeric, safety_critical text, tightening text, label text, source_kind text, source_title text, source_number text,
  source_edition text, source_date text, page text, entered_by text, entered_on date, note text, value_note text, confirmed text)
  LANGUAGE sql STABLE
BEGIN ATOMIC
  SELECT to_spreadsheet(r.machine_maker), to_spreadsheet(r.machine_model), to_spreadsheet(r.machine_variant),
    to_spreadsheet(r.assembly), to_spreadsheet(r.joint), r.role, r.count, r.thread, to_spreadsheet(r.property_class),
    to_spreadsheet(r.form), to_spreadsheet(r.ring), to_spreadsheet(r.housing), r.engagement_mm,
    CASE WHEN r.safety_critical THEN 'yes' ELSE 'no' END, to_spreadsheet(r.tightening), r.label, to_spreadsheet(r.source_kind),
    to_spreadsheet(r.source_title), to_spreadsheet(r.source_number), to_spreadsheet(r.source_edition), r.source_date,
    to_spreadsheet(r.page), to_spreadsheet(r.entered_by), r.entered_on, to_spreadsheet(r.note), to_spreadsheet(r.value_note),
    to_spreadsheet(r.confirmed)
  FROM value_row r WHERE r.id = ANY (ids) ORDER BY r.id;
END;

-- A shop's rows in place of those that it had: all of them or, where one is refused, none.
-- clampbook export --csv >rows.csv && psql -X -q -v shop=NAME -f load_rows.sql <rows.csv
\set ON_ERROR_STOP on
BEGIN;
INSERT INTO shop (name) VALUES (:'shop') ON CONFLICT (name) DO UPDATE SET loaded_at = now();
DELETE FROM value_row WHERE shop = :'shop';
SET LOCAL clampbook.shop = :'shop';
\copy value_row (machine_maker, machine_model, machine_variant, assembly, joint, role, count, thread, property_class, form, ring, housing, engagement_mm, safety_critical, tightening, label, source_kind, source_title, source_number, source_edition, source_date, page, entered_by, entered_on, note, value_note, confirmed) FROM pstdin (FORMAT csv, HEADER match, FORCE_NOT_NULL (machine_variant, thread, property_class, form, ring, housing, tightening, label, source_kind, source_title, source_number, source_edition, source_date, page, entered_by, note, value_note, confirmed))
COMMIT;

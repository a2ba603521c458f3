-- What the sheet says beside a shop's rows: N·m, angle and the second person. Of the same state of the book as the rows, best of one
-- published copy: a value that has no row, or a row that has no value, is refused.
-- clampbook sheet --csv >sheet.csv && psql -X -q -v shop=NAME -f load_sheet.sql <sheet.csv
\set ON_ERROR_STOP on
BEGIN;
CREATE TEMPORARY TABLE sheet_row (machine_maker text, machine text, assembly text, joint text, role text, count text, thread text,
  property_class text, tightening text, "newton_metres[N·m]" float8, newton_metres_print text, "newton_metres_low[N·m]" float8,
  newton_metres_low_print text, "newton_metres_high[N·m]" float8, newton_metres_high_print text, "pound_feet[lbf·ft]" float8,
  pound_feet_print text, "angle[°]" float8, angle_print text, ring text, safety_critical text, disagreement text, label text,
  "check" text, standing text, change text, source text, page text, checked_by text, checked_on date, note text, value_note text)
  ON COMMIT DROP;
\copy sheet_row FROM pstdin (FORMAT csv, HEADER match, FORCE_NOT_NULL (tightening, label, source, page, checked_by))
DELETE FROM value_figure WHERE shop = :'shop';
INSERT INTO value_figure (shop, value, newton_metres, newton_metres_low, newton_metres_high, angle, checked_by, checked_on)
  SELECT :'shop', value_key(from_spreadsheet(machine_maker), from_spreadsheet(machine), from_spreadsheet(assembly),
      from_spreadsheet(joint), label, from_spreadsheet(tightening), from_spreadsheet(source), from_spreadsheet(page)),
    "newton_metres[N·m]", "newton_metres_low[N·m]", "newton_metres_high[N·m]", "angle[°]", from_spreadsheet(checked_by), checked_on
  FROM sheet_row WHERE label <> '' AND standing = 'current';
SELECT count(*) AS missing FROM value_row LEFT JOIN value_figure USING (shop, value)
  WHERE shop = :'shop' AND label <> '' AND value_figure.checked_by IS NULL \gset
SELECT :missing = 0 AS complete \gset
\if :complete
COMMIT;
\else
ROLLBACK;
\warn The sheet lacks :missing of the values whose rows were loaded: take both from the same published copy.
DO $$ BEGIN RAISE EXCEPTION 'the sheet is not that of the rows'; END $$;
\endif

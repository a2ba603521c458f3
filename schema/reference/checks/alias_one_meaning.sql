-- Spellings that differ only in case, spaces or hyphens must lead to the same row.
WITH spelled AS (
  SELECT table_name, code, alias AS text FROM alias
  UNION ALL SELECT 'housing', code, code FROM housing
  UNION ALL SELECT 'plug_form', code, code FROM plug_form
  UNION ALL SELECT 'ring_material', code, code FROM ring_material
  UNION ALL SELECT 'property_class', class, class FROM property_class),
folded AS (
  SELECT table_name, code, lower(replace(replace(text, ' ', ''), '-', '')) AS fold FROM spelled)
SELECT table_name || ' ' || fold || ': ' || min(code) || ' and ' || max(code) AS row
FROM folded
GROUP BY table_name, fold
HAVING min(code) <> max(code);

-- An alias must not be the code of a row: it could never be needed, or would hide that row.
SELECT 'alias ' || a.alias || ' of ' || a.table_name || ' (' || a.code || '): is the code ' || named.code AS row
FROM alias AS a
JOIN (
  SELECT 'housing' AS table_name, code FROM housing
  UNION ALL SELECT 'plug_form', code FROM plug_form
  UNION ALL SELECT 'ring_material', code FROM ring_material
  UNION ALL SELECT 'property_class', class FROM property_class
  UNION ALL SELECT 'property_class', code FROM property_class) AS named
  ON named.table_name = a.table_name AND lower(named.code) = lower(a.alias)
GROUP BY a.table_name, a.code, a.alias;

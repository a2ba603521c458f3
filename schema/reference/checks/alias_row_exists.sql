-- An alias must point to a row that exists.
SELECT 'alias ' || a.alias || ' of ' || a.table_name || ': no row ' || a.code AS row
FROM alias AS a
WHERE NOT EXISTS (
  SELECT 1 FROM (
    SELECT 'housing' AS table_name, code FROM housing
    UNION ALL SELECT 'plug_form', code FROM plug_form
    UNION ALL SELECT 'ring_material', code FROM ring_material
    UNION ALL SELECT 'property_class', class FROM property_class) AS named
  WHERE named.table_name = a.table_name AND named.code = a.code);

-- The size of a metric thread must be M and its major diameter.
SELECT 'thread ' || code || ': size ' || size || ', major diameter ' || major_diameter_print AS row
  FROM thread
 WHERE system = 'M' AND size || ' mm' <> 'M' || major_diameter_print;

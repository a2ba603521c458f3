-- Each friction class must lie above the class before it.
SELECT 'friction_class ' || a.code || ' and ' || b.code || ': ' || a.low_print || ' to '
  || coalesce(a.high_print, 'open') || ', ' || b.low_print || ' to ' || coalesce(b.high_print, 'open') AS row
FROM friction_class AS a
JOIN friction_class AS b ON b.authority = a.authority AND b.code > a.code
WHERE b.low_value <= a.low_value OR b.high_value <= a.high_value OR a.high_value IS NULL;

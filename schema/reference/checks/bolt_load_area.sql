-- The loads of one thread must all stand on one stress area, that printed with the thread where there is one.
SELECT 'bolt_load ' || b.code || ': stress area ' || b.stress_area_print || ', elsewhere ' || o.stress_area_print AS row
  FROM bolt_load AS b JOIN bolt_load AS o ON o.thread = b.thread AND o.code < b.code
 WHERE o.stress_area_print <> b.stress_area_print
UNION ALL
SELECT 'bolt_load ' || b.code || ': stress area ' || b.stress_area_print || ', with the thread ' || t.stress_area_print
  FROM bolt_load AS b JOIN thread AS t ON t.code = b.thread
 WHERE abs(t.stress_area_mm2 - b.stress_area_mm2) > 1e-6;

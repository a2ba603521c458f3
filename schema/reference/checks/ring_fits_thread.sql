-- The nominal hole of a ring must be at most 0.3 mm tighter and 1.5 mm wider than its thread.
SELECT 'ring_thread ' || rt.ring || ' on ' || rt.size || ': hole ' || r.inner_diameter_print || ', thread '
  || max(t.major_diameter_mm) || ' mm' AS row
FROM ring_thread AS rt
JOIN ring AS r ON r.code = rt.ring
JOIN thread AS t ON (t.system = 'M' AND t.size = rt.size) OR (t.system = 'G' AND t.code = rt.size)
GROUP BY rt.ring, rt.size
HAVING r.inner_diameter_mm < max(t.major_diameter_mm) - 0.3 OR r.inner_diameter_mm > max(t.major_diameter_mm) + 1.5;

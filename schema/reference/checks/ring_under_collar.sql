-- A plug that seals by a ring must have a usual ring (form A), no wider than its collar.
SELECT 'plug ' || p.code || ': collar ' || p.collar_diameter_print || ', ring '
  || coalesce(r.code || ' ' || r.outer_diameter_print, 'none') AS row
FROM plug AS p
JOIN plug_form AS f ON f.code = p.form AND f.seal = 'ring'
JOIN thread AS t ON t.code = p.thread
LEFT JOIN ring_thread AS rt ON rt.usual = 'yes' AND rt.size = CASE t.system WHEN 'M' THEN t.size ELSE t.code END
  AND rt.ring IN (SELECT code FROM ring WHERE form = 'A')
LEFT JOIN ring AS r ON r.code = rt.ring
WHERE r.code IS NULL OR p.collar_diameter_mm IS NULL OR r.outer_diameter_mm > p.collar_diameter_mm;

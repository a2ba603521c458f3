-- Within a standard no dimension, and no torque, may fall from one thread size to a larger one.
WITH metric AS (SELECT size, max(major_diameter_mm) AS major FROM thread WHERE system = 'M' GROUP BY size),
measure AS (
  SELECT 'head ' || h.standard || ' ' || replace(h.grade, 'A/B', 'A') AS series, h.code, m.major, d.what, d.mm
  FROM head AS h
  JOIN metric AS m ON m.size = h.size
  JOIN (
    SELECT code, 'across flats' AS what, across_flats_mm AS mm FROM head
    UNION ALL SELECT code, 'height', coalesce(height_mm, height_max_mm) FROM head
    UNION ALL SELECT code, 'bearing diameter', bearing_diameter_min_mm FROM head) AS d ON d.code = h.code
  UNION ALL
  SELECT 'washer ' || w.standard, w.code, m.major, 'hole', w.hole_diameter_min_mm
  FROM washer AS w JOIN metric AS m ON m.size = w.size
  UNION ALL
  SELECT 'washer ' || w.standard, w.code, m.major, 'outer diameter', w.outer_diameter_max_mm
  FROM washer AS w JOIN metric AS m ON m.size = w.size
  UNION ALL
  SELECT 'clearance_hole', c.code, m.major, 'medium', c.medium_mm
  FROM clearance_hole AS c JOIN metric AS m ON m.size = c.size
  UNION ALL
  SELECT 'clearance_hole', c.code, m.major, 'coarse', c.coarse_mm
  FROM clearance_hole AS c JOIN metric AS m ON m.size = c.size
  UNION ALL
  SELECT 'plug ' || p.standard, p.code, t.major_diameter_mm, 'across flats', p.across_flats_mm
  FROM plug AS p JOIN thread AS t ON t.code = p.thread
  UNION ALL
  SELECT 'plug ' || p.standard, p.code, t.major_diameter_mm, 'thread length', p.thread_length_mm
  FROM plug AS p JOIN thread AS t ON t.code = p.thread
  UNION ALL
  SELECT 'port_torque ' || p.standard, p.code, t.major_diameter_mm, 'torque', p.torque_Nm
  FROM port_torque AS p JOIN thread AS t ON t.code = p.thread)
SELECT a.series || ', ' || a.what || ': ' || a.code || ' has ' || a.mm || ', ' || b.code || ' has ' || b.mm AS row
FROM measure AS a
JOIN measure AS b ON b.series = a.series AND b.what = a.what AND b.major > a.major AND b.mm < a.mm;

-- A head must be one that can bear and be driven.
-- Its bearing face is wider than the fine clearance hole and narrower than a plain hexagon, the face of a flange is
-- wider than its hexagon, and a hexagon is larger and a socket smaller than the thread.
WITH metric AS (SELECT size, max(major_diameter_mm) AS major FROM thread WHERE system = 'M' GROUP BY size)
SELECT 'head ' || h.code || ': across flats ' || h.across_flats_print || ', bearing diameter '
  || coalesce(h.bearing_diameter_min_print, 'none') AS row
FROM head AS h
JOIN metric AS m ON m.size = h.size
LEFT JOIN clearance_hole AS c ON c.size = h.size
WHERE h.bearing_diameter_min_mm <= coalesce(c.fine_mm, m.major)
  OR (h.kind IN ('hexagon', 'nut') AND h.bearing_diameter_min_mm >= h.across_flats_mm)
  OR (h.kind IN ('flange', 'flange nut') AND h.bearing_diameter_min_mm <= h.across_flats_mm)
  OR (h.kind = 'socket' AND h.across_flats_mm >= m.major)
  OR (h.kind <> 'socket' AND h.across_flats_mm <= m.major);

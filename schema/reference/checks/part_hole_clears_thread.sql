-- A clearance hole, and the hole of a washer, must be wider than the thread.
WITH metric AS (SELECT size, max(major_diameter_mm) AS major FROM thread WHERE system = 'M' GROUP BY size)
SELECT 'clearance_hole ' || c.code || ': ' || c.fine_print || ' for ' || m.size AS row
FROM clearance_hole AS c JOIN metric AS m ON m.size = c.size
WHERE c.fine_mm <= m.major
UNION ALL
SELECT 'washer ' || w.code || ': ' || w.hole_diameter_min_print || ' for ' || m.size
FROM washer AS w JOIN metric AS m ON m.size = w.size
WHERE w.hole_diameter_min_mm <= m.major;

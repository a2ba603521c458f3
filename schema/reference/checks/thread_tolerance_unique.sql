-- A tolerance must stand once for its kind, range of diameters and pitch.
SELECT 'thread_tolerance ' || min(code) || ' and ' || max(code) || ': same kind, range and pitch' AS row
  FROM thread_tolerance
 GROUP BY tolerance, coalesce(over_mm, 0), pitch_mm
HAVING count(*) > 1;

-- A tolerance must not become smaller as the pitch grows, nor as the range of diameters grows.
SELECT 'thread_tolerance ' || b.code || ': smaller than ' || a.code AS row
  FROM thread_tolerance AS a JOIN thread_tolerance AS b ON b.tolerance = a.tolerance
 WHERE b.pitch_mm >= a.pitch_mm AND coalesce(b.over_mm, 0) = coalesce(a.over_mm, 0) AND b.size_mm < a.size_mm
    OR b.pitch_mm = a.pitch_mm AND b.over_mm > a.over_mm AND b.size_mm <= a.size_mm;

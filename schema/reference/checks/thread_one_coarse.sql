-- A size must not have two coarse pitches, nor two UNC or UNF threads.
SELECT 'thread ' || min(code) || ' and ' || max(code) || ': both ' || series || ' of size ' || size AS row
  FROM thread
 WHERE series IN ('coarse', 'UNC', 'UNF', '8-UN')
 GROUP BY system, series, size
HAVING count(*) > 1;

-- A part must be made for a thread size that the thread table has.
SELECT used.table_name || ' ' || used.code || ': no thread of size ' || used.size AS row
FROM (
  SELECT 'head' AS table_name, code, size FROM head
  UNION ALL SELECT 'washer', code, size FROM washer
  UNION ALL SELECT 'clearance_hole', code, size FROM clearance_hole
  UNION ALL SELECT 'ring_thread', ring, size FROM ring_thread) AS used
WHERE NOT EXISTS (SELECT 1 FROM thread AS t WHERE t.system = 'M' AND t.size = used.size)
  AND NOT (used.table_name = 'ring_thread' AND
    EXISTS (SELECT 1 FROM thread AS t WHERE t.system = 'G' AND t.code = used.size));

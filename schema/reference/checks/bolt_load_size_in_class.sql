-- The thread of a bolt load must lie in exactly one size range of its property class.
SELECT 'bolt_load ' || b.code || ': in ' || count(c.code) || ' size ranges of class ' || b.class AS row
  FROM bolt_load AS b
  JOIN thread AS t ON t.code = b.thread
  LEFT JOIN property_class AS c
    ON c.authority = b.authority AND c.class = b.class AND c.thread_system = t.system
   AND t.major_diameter_mm > coalesce(c.over_mm, c.from_mm - 0.001) AND t.major_diameter_mm <= c.up_to_mm + 0.001
 GROUP BY b.authority, b.code
HAVING count(c.code) <> 1;

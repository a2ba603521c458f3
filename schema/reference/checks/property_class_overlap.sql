-- The size ranges of one property class must not overlap.
SELECT 'property_class ' || a.code || ' and ' || b.code || ': size ranges overlap' AS row
  FROM property_class AS a JOIN property_class AS b
    ON b.authority = a.authority AND b.class = a.class AND b.thread_system = a.thread_system AND b.code > a.code
 WHERE coalesce(a.over_mm, a.from_mm - 0.001) < b.up_to_mm AND coalesce(b.over_mm, b.from_mm - 0.001) < a.up_to_mm;

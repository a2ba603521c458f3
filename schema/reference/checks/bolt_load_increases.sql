-- Within one row of a property class and one pitch series a larger thread must carry larger loads.
WITH
  given AS (
    SELECT b.code, b.proof_load_N, b.tensile_load_N, t.major_diameter_mm, t.series, c.authority, c.code AS class_row
      FROM bolt_load AS b
      JOIN thread AS t ON t.code = b.thread
      JOIN property_class AS c
        ON c.authority = b.authority AND c.class = b.class AND c.thread_system = t.system
       AND t.major_diameter_mm > coalesce(c.over_mm, c.from_mm - 0.001)
       AND t.major_diameter_mm <= c.up_to_mm + 0.001)
SELECT 'bolt_load ' || b.code || ': load not larger than that of ' || a.code AS row
  FROM given AS a JOIN given AS b
    ON b.authority = a.authority AND b.class_row = a.class_row AND b.series = a.series
   AND b.major_diameter_mm > a.major_diameter_mm + 0.001
 WHERE b.proof_load_N <= a.proof_load_N OR b.tensile_load_N <= a.tensile_load_N;

-- Each thread that carries loads must carry them for every class of its standard whose size range it lies in.
SELECT 'bolt_load ' || t.code || ': no loads for class ' || c.class AS row
  FROM (SELECT DISTINCT authority, thread FROM bolt_load) AS l
  JOIN thread AS t ON t.code = l.thread
  JOIN property_class AS c
    ON c.authority = l.authority AND c.thread_system = t.system AND c.proof_stress_MPa IS NOT NULL
   AND t.major_diameter_mm > coalesce(c.over_mm, c.from_mm - 0.001) AND t.major_diameter_mm <= c.up_to_mm + 0.001
 WHERE NOT EXISTS (SELECT 1 FROM bolt_load AS b
                    WHERE b.authority = l.authority AND b.thread = l.thread AND b.class = c.class);

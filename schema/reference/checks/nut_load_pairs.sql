-- A nut of a style must be as strong as the screw of its class: proof stress not under the screw's proof stress.
SELECT 'nut_load ' || n.code || ': proof stress ' || n.proof_stress_print || ' under that of screws ' || c.code AS row
  FROM nut_load AS n
  JOIN thread AS t ON t.code = n.thread
  JOIN property_class AS c
    ON c.authority = n.authority AND c.thread_system = t.system AND c.class GLOB n.class || '.*'
   AND t.major_diameter_mm > coalesce(c.over_mm, c.from_mm - 0.001) AND t.major_diameter_mm <= c.up_to_mm + 0.001
 WHERE n.proof_stress_MPa < c.proof_stress_MPa;

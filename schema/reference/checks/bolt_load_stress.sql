-- A bolt load must be stress area times the stress of its class within 1 %, or half a step of a table in lbf (25 lbf).
WITH
  given AS (
    SELECT b.code, b.proof_load_print, b.proof_load_N, b.stress_area_mm2 * c.proof_stress_MPa AS proof,
           b.tensile_load_print, b.tensile_load_N, b.stress_area_mm2 * c.tensile_strength_MPa AS tensile
      FROM bolt_load AS b
      JOIN thread AS t ON t.code = b.thread
      JOIN property_class AS c
        ON c.authority = b.authority AND c.class = b.class AND c.thread_system = t.system
       AND t.major_diameter_mm > coalesce(c.over_mm, c.from_mm - 0.001)
       AND t.major_diameter_mm <= c.up_to_mm + 0.001)
SELECT 'bolt_load ' || code || ': proof load ' || proof_load_print || ', area x proof stress '
       || printf('%.0f N', proof) AS row
  FROM given
 WHERE abs(proof_load_N - proof)
       > max(0.01 * proof, CASE WHEN proof_load_print LIKE '% lbf' THEN 111.3 ELSE 0 END)
UNION ALL
SELECT 'bolt_load ' || code || ': tensile load ' || tensile_load_print || ', area x tensile strength '
       || printf('%.0f N', tensile)
  FROM given
 WHERE abs(tensile_load_N - tensile)
       > max(0.01 * tensile, CASE WHEN tensile_load_print LIKE '% lbf' THEN 111.3 ELSE 0 END);

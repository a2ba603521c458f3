-- A breaking torque of ISO 898-7 must be ratio x tensile strength x pi/16 x (smallest minor diameter)^3 within 5 %.
-- The smallest minor diameter is that of tolerance 6g (ISO 965-1), with the root rounded by H/4: d2 min - 0.616025 P.
WITH
  core AS (
    SELECT b.code, b.torque_print, b.torque_Nm, b.strength_ratio_value AS ratio,
           (SELECT min(c.tensile_strength_MPa) FROM property_class AS c
             WHERE c.authority = b.authority AND c.class = b.class) AS strength,
           t.major_diameter_mm - 0.649519053 * t.pitch_mm - g.size_mm - e.size_mm - 0.616025 * t.pitch_mm AS d3
      FROM breaking_torque AS b
      JOIN thread AS t ON t.code = b.thread
      JOIN thread_tolerance AS g ON g.tolerance = 'es g' AND abs(g.pitch_mm - t.pitch_mm) < 1e-9
      JOIN thread_tolerance AS e ON e.tolerance = 'Td2 6' AND abs(e.pitch_mm - t.pitch_mm) < 1e-9
       AND t.major_diameter_mm > e.over_mm AND t.major_diameter_mm <= e.up_to_mm
     WHERE b.strength_ratio_value IS NOT NULL AND t.major_diameter_mm >= 1.6)
SELECT 'breaking_torque ' || code || ': ' || torque_print || ', by formula '
       || printf('%.3f N·m', ratio * strength * 0.19634954 * d3 * d3 * d3 / 1000) AS row
  FROM core
 WHERE abs(torque_Nm / (ratio * strength * 0.19634954 * d3 * d3 * d3 / 1000) - 1) > 0.05;

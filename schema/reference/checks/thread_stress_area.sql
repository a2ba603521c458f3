-- A printed stress area must be that of the mean of pitch and minor diameter, within its rounding and 0.6 %.
WITH
  area AS (
    SELECT 'thread ' || code AS what, stress_area_print AS print, stress_area_mm2 AS found, system,
           major_diameter_mm AS d, coalesce(pitch_mm, 25.4 / threads_per_inch_value) AS p
      FROM thread WHERE stress_area_mm2 IS NOT NULL
    UNION ALL
    SELECT 'bolt_load ' || b.code, b.stress_area_print, b.stress_area_mm2, t.system,
           t.major_diameter_mm, coalesce(t.pitch_mm, 25.4 / t.threads_per_inch_value)
      FROM bolt_load AS b JOIN thread AS t ON t.code = b.thread),
  rounding AS (
    SELECT *,
           0.785398163397448 * (d - p * CASE system WHEN 'M' THEN 0.938194187 ELSE 0.9743 END)
                             * (d - p * CASE system WHEN 'M' THEN 0.938194187 ELSE 0.9743 END) AS expected,
           CASE WHEN instr(print, '.') = 0 THEN 0.5
                ELSE CASE instr(print, ' ') - instr(print, '.') - 1
                       WHEN 1 THEN 0.05 WHEN 2 THEN 0.005 WHEN 3 THEN 0.0005 WHEN 4 THEN 0.00005 ELSE 0.000005 END
           END * CASE WHEN print LIKE '%in²' THEN 645.16 ELSE 1 END AS half
      FROM area)
SELECT what || ': stress area ' || print || ', by formula ' || printf('%.4f', expected) || ' mm²' AS row
  FROM rounding
 WHERE abs(found - expected) > half * 1.001 + 0.006 * expected;

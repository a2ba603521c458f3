-- A larger thread must not break at a smaller torque in one class, nor a stronger class of one standard in one thread.
WITH
  given AS (
    SELECT b.code, b.source, b.class, b.thread, b.torque_Nm, t.major_diameter_mm, t.series,
           (SELECT max(c.tensile_strength_MPa) FROM property_class AS c
             WHERE c.authority = b.authority AND c.class = b.class) AS strength
      FROM breaking_torque AS b JOIN thread AS t ON t.code = b.thread)
SELECT 'breaking_torque ' || b.code || ': not larger than ' || a.code AS row
  FROM given AS a JOIN given AS b ON b.source = a.source
 WHERE b.torque_Nm <= a.torque_Nm
   AND ((b.class = a.class AND b.series = a.series AND b.major_diameter_mm > a.major_diameter_mm + 0.001)
     OR (b.thread = a.thread AND b.strength > a.strength));

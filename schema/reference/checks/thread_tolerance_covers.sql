-- Every metric thread must have a tolerance of the pitch diameter of the external thread for its size and pitch.
SELECT 'thread ' || t.code || ': no Td2 6 for its size and pitch' AS row
  FROM thread AS t
 WHERE t.system = 'M'
   AND NOT EXISTS (SELECT 1 FROM thread_tolerance AS x
                    WHERE x.tolerance = 'Td2 6' AND abs(x.pitch_mm - t.pitch_mm) < 1e-9
                      AND t.major_diameter_mm > x.over_mm AND t.major_diameter_mm <= x.up_to_mm);

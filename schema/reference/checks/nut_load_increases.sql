-- In one class and style a larger nut must carry a larger load, and a higher class of one style not less.
SELECT 'nut_load ' || b.code || ': load not larger than that of ' || a.code AS row
  FROM nut_load AS a
  JOIN thread AS ta ON ta.code = a.thread
  JOIN nut_load AS b ON b.class = a.class AND b.style = a.style
  JOIN thread AS tb
    ON tb.code = b.thread AND tb.series = ta.series AND tb.major_diameter_mm > ta.major_diameter_mm + 0.001
 WHERE b.proof_load_N <= a.proof_load_N
UNION ALL
SELECT 'nut_load ' || b.code || ': proof stress smaller than that of ' || a.code
  FROM nut_load AS a JOIN nut_load AS b ON b.thread = a.thread AND b.style = a.style
 WHERE CAST(b.class AS INTEGER) > CAST(a.class AS INTEGER) AND b.proof_stress_MPa < a.proof_stress_MPa;

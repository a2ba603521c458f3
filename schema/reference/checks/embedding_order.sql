-- A rougher surface must not embed less than a smoother one.
WITH ranked AS (
  SELECT *, CASE roughness WHEN 'Rz < 10 µm' THEN 1 WHEN '10 µm <= Rz < 40 µm' THEN 2 ELSE 3 END AS rank
  FROM embedding)
SELECT 'embedding ' || a.code || ': ' || a.amount_print || ', ' || b.code || ': ' || b.amount_print AS row
FROM ranked AS a
JOIN ranked AS b ON b.authority = a.authority AND b.load = a.load AND b.location = a.location AND b.rank > a.rank
WHERE b.amount_mm < a.amount_mm;

-- The mass of a plug must agree with its dimensions to 5 %.
-- Steel of 7.85 kg/dm³, the thread a cylinder of the pitch diameter (a taper thread of 1 in 16: of its mean), a socket
-- half as deep as the thread is long.
WITH body AS (
  SELECT p.code, p.mass_kg_per_1000_value AS mass,
    0.00785 * (0.785398 * c.diameter * c.diameter * p.thread_length_mm
      + coalesce(0.785398 * p.collar_diameter_mm * p.collar_diameter_mm * p.collar_height_mm, 0)
      + coalesce(0.866025 * p.across_flats_mm * p.across_flats_mm * p.head_height_mm, 0)
      - CASE f.drive WHEN 'hexagon socket'
          THEN 0.866025 * p.across_flats_mm * p.across_flats_mm * p.thread_length_mm / 2 ELSE 0 END) AS computed
  FROM plug AS p
  JOIN plug_form AS f ON f.code = p.form
  JOIN (
    SELECT q.code, t.major_diameter_mm - 0.649519 * t.pitch_mm
      - CASE q.thread_form WHEN 'taper' THEN q.thread_length_mm / 32 ELSE 0 END AS diameter
    FROM plug AS q JOIN thread AS t ON t.code = q.thread AND t.system = 'M') AS c ON c.code = p.code
  WHERE p.mass_kg_per_1000_value IS NOT NULL)
SELECT 'plug ' || code || ': ' || mass || ' printed, ' || round(computed, 2) || ' computed' AS row
FROM body
WHERE abs(computed / mass - 1) > 0.05;

-- A plug must be one that can be made.
-- Its collar is wider than thread and hexagon, its socket fits in the thread, it has a collar if it seals by a ring and
-- none otherwise, and a taper plug has no parallel pipe thread, nor a parallel plug a taper one.
SELECT 'plug ' || p.code || ': across flats ' || p.across_flats_print || ', collar '
  || coalesce(p.collar_diameter_print, 'none') || ', thread ' || t.code AS row
FROM plug AS p
JOIN plug_form AS f ON f.code = p.form
JOIN thread AS t ON t.code = p.thread
WHERE p.collar_diameter_mm <= t.major_diameter_mm
  OR (f.drive = 'hexagon' AND p.collar_diameter_mm < p.across_flats_mm)
  OR (f.drive = 'hexagon socket' AND p.across_flats_mm * 1.1547 >= t.major_diameter_mm)
  OR (f.seal = 'ring') <> (p.collar_diameter_mm IS NOT NULL)
  OR (f.seal = 'thread' AND p.thread_form = 'taper' AND t.system = 'G')
  OR (p.thread_form = 'parallel' AND t.system IN ('R', 'NPT'));

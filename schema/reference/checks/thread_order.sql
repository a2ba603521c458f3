-- The minor diameters of a thread must be smaller than its pitch diameter, and that smaller than its major diameter.
SELECT 'thread ' || code || ': minor, pitch and major diameter do not follow in this order' AS row
  FROM thread
 WHERE coalesce(minor_external_mm, 0) >= coalesce(minor_internal_mm, pitch_diameter_mm, major_diameter_mm)
    OR coalesce(minor_internal_mm, 0) >= coalesce(pitch_diameter_mm, major_diameter_mm)
    OR coalesce(pitch_diameter_mm, 0) >= major_diameter_mm;

-- The tolerance of the pitch diameter must be larger for the internal thread than for the external one.
SELECT 'thread_tolerance ' || i.code || ': ' || i.size_print || ', external ' || e.size_print AS row
  FROM thread_tolerance AS i JOIN thread_tolerance AS e
    ON i.tolerance = 'TD2 6' AND e.tolerance = 'Td2 6' AND i.pitch_mm = e.pitch_mm AND i.over_mm = e.over_mm
 WHERE i.size_mm <= e.size_mm;

-- A computed row must be derived, and a derived row must say that it was computed.
SELECT what || ' ' || code || ': ' || basis || ' and keyed ' || keyed AS row
  FROM (SELECT 'thread' AS what, code, basis, keyed FROM thread UNION ALL
        SELECT 'thread_tolerance', code, basis, keyed FROM thread_tolerance UNION ALL
        SELECT 'property_class', code, basis, keyed FROM property_class UNION ALL
        SELECT 'bolt_load', code, basis, keyed FROM bolt_load UNION ALL
        SELECT 'nut_load', code, basis, keyed FROM nut_load UNION ALL
        SELECT 'breaking_torque', code, basis, keyed FROM breaking_torque)
 WHERE (basis = 'derived') <> (keyed = 'computed');

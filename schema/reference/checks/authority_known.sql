-- Every row must stand under an authority that table authority names.
SELECT what || ' ' || code || ': unknown authority ' || authority AS row
  FROM (SELECT 'source' AS what, authority, code FROM source UNION ALL
        SELECT 'thread', authority, code FROM thread UNION ALL
        SELECT 'thread_tolerance', authority, code FROM thread_tolerance UNION ALL
        SELECT 'property_class', authority, code FROM property_class UNION ALL
        SELECT 'bolt_load', authority, code FROM bolt_load UNION ALL
        SELECT 'nut_load', authority, code FROM nut_load UNION ALL
        SELECT 'breaking_torque', authority, code FROM breaking_torque)
 WHERE authority NOT IN (SELECT code FROM authority);

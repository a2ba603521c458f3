-- The class of a load or breaking torque must be a property class of the same authority and thread system.
SELECT x.what || ' ' || x.code || ': no property class ' || x.class || ' of ' || x.authority AS row
  FROM (SELECT 'bolt_load' AS what, authority, code, thread, class FROM bolt_load
        UNION ALL
        SELECT 'breaking_torque', authority, code, thread, class FROM breaking_torque) AS x
  JOIN thread AS t ON t.code = x.thread
 WHERE NOT EXISTS (SELECT 1 FROM property_class AS c
                    WHERE c.authority = x.authority AND c.class = x.class AND c.thread_system = t.system);

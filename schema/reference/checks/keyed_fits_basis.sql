-- A computed row must be derived, and a derived row must say that it was computed.
SELECT what || ' ' || code || ': ' || basis || ' and keyed ' || keyed AS row
  FROM (SELECT 'thread' AS what, code, basis, keyed FROM thread UNION ALL
        SELECT 'thread_tolerance', code, basis, keyed FROM thread_tolerance UNION ALL
        SELECT 'property_class', code, basis, keyed FROM property_class UNION ALL
        SELECT 'bolt_load', code, basis, keyed FROM bolt_load UNION ALL
        SELECT 'nut_load', code, basis, keyed FROM nut_load UNION ALL
        SELECT 'breaking_torque', code, basis, keyed FROM breaking_torque UNION ALL
        SELECT 'plug_form', code, basis, keyed FROM plug_form UNION ALL
        SELECT 'plug', code, basis, keyed FROM plug UNION ALL
        SELECT 'ring_material', code, basis, keyed FROM ring_material UNION ALL
        SELECT 'ring', code, basis, keyed FROM ring UNION ALL
        SELECT 'ring_thread', ring, basis, keyed FROM ring_thread UNION ALL
        SELECT 'head', code, basis, keyed FROM head UNION ALL
        SELECT 'washer', code, basis, keyed FROM washer UNION ALL
        SELECT 'clearance_hole', code, basis, keyed FROM clearance_hole UNION ALL
        SELECT 'port_torque', code, basis, keyed FROM port_torque UNION ALL
        SELECT 'housing', code, basis, keyed FROM housing UNION ALL
        SELECT 'embedding', code, basis, keyed FROM embedding UNION ALL
        SELECT 'friction_class', code, basis, keyed FROM friction_class UNION ALL
        SELECT 'nut_factor', code, basis, keyed FROM nut_factor UNION ALL
        SELECT 'tightening_scatter', code, basis, keyed FROM tightening_scatter UNION ALL
        SELECT 'tool_accuracy', code, basis, keyed FROM tool_accuracy UNION ALL
        SELECT 'preload_choice', code, basis, keyed FROM preload_choice UNION ALL
        SELECT 'pipe_tolerance', code, basis, keyed FROM pipe_tolerance UNION ALL
        SELECT 'screw_shear', code, basis, keyed FROM screw_shear UNION ALL
        SELECT 'concept', code, basis, keyed FROM concept UNION ALL
        SELECT 'word', code, basis, keyed FROM word)
 WHERE (basis = 'derived') <> (keyed = 'computed');

-- A source must be cited by at least one row. (A new table with a citation joins this list.)
SELECT 'source ' || code || ': nothing cites it' AS row
  FROM source
 WHERE code NOT IN (
   SELECT source FROM thread UNION
   SELECT source FROM thread_tolerance UNION
   SELECT source FROM property_class UNION
   SELECT source FROM bolt_load UNION
   SELECT source FROM nut_load UNION
   SELECT source FROM breaking_torque UNION
   SELECT source FROM plug_form UNION
   SELECT source FROM plug UNION
   SELECT source FROM ring_material UNION
   SELECT seating_source FROM ring_material WHERE seating_source IS NOT NULL UNION
   SELECT source FROM ring UNION
   SELECT source FROM ring_thread UNION
   SELECT source FROM head UNION
   SELECT source FROM washer UNION
   SELECT source FROM clearance_hole UNION
   SELECT source FROM port_torque UNION
   SELECT source FROM housing UNION
   SELECT shear_source FROM housing UNION
   SELECT elastic_source FROM housing UNION
   SELECT pressure_source FROM housing WHERE pressure_source IS NOT NULL UNION
   SELECT source FROM embedding UNION
   SELECT source FROM friction_class UNION
   SELECT source FROM nut_factor UNION
   SELECT source FROM tightening_scatter UNION
   SELECT source FROM tool_accuracy UNION
   SELECT source FROM preload_choice UNION
   SELECT source FROM pipe_tolerance UNION
   SELECT source FROM screw_shear UNION
   SELECT source FROM concept UNION
   SELECT source FROM word);

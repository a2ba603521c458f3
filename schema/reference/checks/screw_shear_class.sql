-- The class of a shear ratio must be a property class of metric screws.
SELECT 'screw_shear ' || code || ': no such property class' AS row
  FROM screw_shear AS s
 WHERE NOT EXISTS (SELECT 1 FROM property_class AS c WHERE c.class = s.code AND c.thread_system = 'M');

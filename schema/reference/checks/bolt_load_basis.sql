-- A bolt load must be called published exactly when both of its loads are, and a computed one must not be.
SELECT 'bolt_load ' || code || ': ' || basis || ' and keyed ' || keyed || ', but its loads are ' || proof_load_basis
       || ' and ' || tensile_load_basis AS row
  FROM bolt_load
 WHERE (basis = 'published') <> (proof_load_basis = 'published' AND tensile_load_basis = 'published')
    OR (keyed = 'computed') = (basis = 'published')
UNION ALL
SELECT 'nut_load ' || code || ': ' || basis || ', but its load is ' || proof_load_basis
  FROM nut_load
 WHERE proof_load_basis IS NOT NULL AND (basis <> proof_load_basis OR (keyed = 'computed') = (basis = 'published'));

-- A shear ratio must be the printed shear strength over the tensile strength, within its rounding.
SELECT 'housing ' || code || ': ' || shear_ratio_print || ' keyed, '
  || round(shear_strength_MPa / tensile_strength_MPa, 4) || ' computed' AS row
FROM housing
WHERE abs(shear_strength_MPa / tensile_strength_MPa - shear_ratio_value) > 0.0051;

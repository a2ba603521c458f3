-- The expected value of a known difference must be what the rule gives.
SELECT 'known_difference ' || k.table_name || ' ' || k.code || ' ' || k.field || ': expected ' || k.expected
       || ', the rule gives ' || printf('%.5f', r.expected)
       || CASE r.table_name WHEN 'thread' THEN ' mm' ELSE ' N' END AS row
  FROM known_difference AS k
  JOIN print_by_rule AS r ON r.table_name = k.table_name AND r.code = k.code AND r.field = k.field
 WHERE abs(CAST(k.expected AS REAL) * CASE WHEN k.expected LIKE '% in' THEN 25.4
                                           WHEN k.expected LIKE '% lbf' THEN 4.4482216152605 ELSE 1 END - r.expected)
       > r.allowed;

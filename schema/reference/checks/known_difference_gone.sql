-- A known difference must still be there: the print as listed, and not what the rule gives.
SELECT 'known_difference ' || k.table_name || ' ' || k.code || ' ' || k.field || ': '
       || CASE WHEN r.code IS NULL THEN 'no such print'
               WHEN r.print <> k.print THEN 'the print is ' || r.print || ', not ' || k.print
               ELSE r.print || ' is what the rule gives' END AS row
  FROM known_difference AS k
  LEFT JOIN print_by_rule AS r ON r.table_name = k.table_name AND r.code = k.code AND r.field = k.field
 WHERE r.code IS NULL OR r.print <> k.print OR abs(r.found - r.expected) <= r.allowed;

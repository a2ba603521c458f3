-- A print must be what the rule gives, to its last digit, unless the difference is listed in known_difference.
SELECT r.table_name || ' ' || r.code || ': ' || r.field || ' ' || r.print || ', by rule '
       || printf('%.5f', r.expected) || CASE r.table_name WHEN 'thread' THEN ' mm' ELSE ' N' END AS row
  FROM print_by_rule AS r
 WHERE abs(r.found - r.expected) > r.allowed
   AND NOT EXISTS (SELECT 1 FROM known_difference AS k
                    WHERE k.table_name = r.table_name AND k.code = r.code AND k.field = r.field);

-- Of the rings of one form for one thread size exactly one must be the usual one.
SELECT 'ring_thread form ' || r.form || ', ' || rt.size || ': ' || sum(rt.usual = 'yes') || ' usual rings' AS row
FROM ring_thread AS rt JOIN ring AS r ON r.code = rt.ring
GROUP BY r.form, rt.size
HAVING sum(rt.usual = 'yes') <> 1;

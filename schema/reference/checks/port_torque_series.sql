-- A light-duty port must not be tightened harder than the heavy-duty port of the same thread.
SELECT 'port_torque ' || l.code || ': ' || l.torque_print || ' against ' || s.torque_print AS row
FROM port_torque AS l
JOIN port_torque AS s ON s.thread = l.thread AND s.series = 'S'
WHERE l.series = 'L' AND l.torque_Nm > s.torque_Nm;

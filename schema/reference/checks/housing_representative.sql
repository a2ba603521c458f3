-- Each family of housing materials must have exactly one representative.
SELECT 'housing ' || family || ': ' || sum(representative = 'yes') || ' representatives' AS row
FROM housing
GROUP BY family
HAVING sum(representative = 'yes') <> 1;

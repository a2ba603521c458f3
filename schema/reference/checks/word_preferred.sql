-- each concept needs words, and exactly one preferred word, in each of the five languages
WITH language (code) AS (VALUES ('de'), ('en'), ('es'), ('fr'), ('sv'))
SELECT 'concept ' || c.code || ': ' || l.code || ': '
  || (SELECT count(*) FROM word w WHERE w.concept = c.code AND w.language = l.code AND w.preferred = 'yes')
  || ' preferred words' AS "row"
FROM concept c CROSS JOIN language l
WHERE (SELECT count(*) FROM word w WHERE w.concept = c.code AND w.language = l.code AND w.preferred = 'yes') <> 1;

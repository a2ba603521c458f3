-- the name of a concept must be its preferred English word
SELECT 'concept ' || c.code || ': name is ' || c.name || ', preferred English word is ' || w.word AS "row"
FROM concept c JOIN word w ON w.concept = c.code AND w.language = 'en' AND w.preferred = 'yes'
WHERE c.name <> w.word;

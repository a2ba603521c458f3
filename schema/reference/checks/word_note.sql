-- a note that says "also" another concept must be true: the same word stands there too
SELECT 'word ' || w.code || ': ' || w.note AS "row"
FROM word w
WHERE w.note LIKE 'also %' AND w.note NOT LIKE 'also a %'
  AND NOT EXISTS (SELECT 1 FROM word o WHERE o.concept = substr(w.note, 6) AND o.language = w.language
    AND lower(o.word) = lower(w.word));

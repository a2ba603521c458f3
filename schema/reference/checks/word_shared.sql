-- a word that stands under two concepts must name the other concept in its note, in each of the two rows
SELECT 'word ' || w.code || ': also stands under ' || o.concept AS "row"
FROM word w JOIN word o ON lower(w.word) = lower(o.word) AND w.concept <> o.concept
WHERE w.note IS NULL OR instr(' ' || w.note || ' ', ' ' || o.concept || ' ') = 0;

-- German nouns begin with a capital letter; the other languages write trade words small, but for O-ring and short signs
SELECT 'word ' || w.code || ': letter case' AS "row"
FROM word w JOIN concept c ON c.code = w.concept
WHERE (w.language = 'de' AND instr(w.word, ' ') = 0 AND c.kind NOT IN ('act', 'state') AND w.word GLOB '[a-zäöüß]*')
  OR (w.language <> 'de' AND w.word GLOB '[A-ZÅÄÖÉÍÓ]*'
    AND w.word NOT GLOB 'O[- ]ring*' AND w.word NOT IN ('AF', 'NV'));

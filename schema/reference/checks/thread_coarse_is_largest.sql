-- The coarse pitch must be the largest pitch of its size, and UNC must have fewer threads per inch than UNF.
SELECT 'thread ' || f.code || ': pitch not smaller than that of ' || c.code AS row
  FROM thread AS f JOIN thread AS c ON c.system = f.system AND c.size = f.size
 WHERE (c.series = 'coarse' AND f.series = 'fine' AND f.pitch_mm >= c.pitch_mm)
    OR (c.series = 'UNC' AND f.series = 'UNF' AND f.threads_per_inch_value <= c.threads_per_inch_value);

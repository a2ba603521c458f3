-- The code of a thread must be its size and, unless coarse metric, G or R, its pitch or threads per inch.
SELECT 'thread ' || code || ': size ' || size || ' and pitch ask for the code ' || wanted AS row
  FROM (SELECT code, size,
               CASE WHEN system = 'M' AND series = 'coarse' THEN size
                    WHEN system = 'M' THEN size || 'x' || replace(pitch_print, ' mm', '')
                    WHEN system = 'UN' THEN size || '-' || threads_per_inch_print || ' ' || series
                    WHEN system = 'NPT' THEN size || '-' || threads_per_inch_print || ' NPT'
                    ELSE system || size END AS wanted
          FROM thread)
 WHERE code <> wanted;

-- a word that by itself may mean many things would make a search for one find another
SELECT 'word ' || w.code || ': too broad to stand alone' AS "row"
FROM word w
WHERE lower(w.word) IN (
  'plug', 'cap', 'case', 'body', 'pan', 'screen', 'seal', 'ring', 'joint', 'box', 'gear', 'shaft', 'level', 'drain',
  'fill', 'oil', 'stopfen', 'wanne', 'sicherung', 'welle', 'öl', 'bouchon', 'bague', 'corps', 'arbre', 'niveau',
  'huile', 'boîte', 'freinage', 'tapón', 'anillo', 'junta', 'cuerpo', 'caja', 'aceite', 'nivel', 'seguro', 'plugg',
  'propp', 'tätning', 'nippel', 'olja', 'nivå', 'låda');

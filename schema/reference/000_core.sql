-- The frame that every curated table stands in: who issues names (authority), what was read (source), and what the
-- database says of itself (metadata).
--
-- Conventions of every table that follows
--   authority, code   the key; code is unique within its authority. Our own rows stand under CLAMPBOOK.
--   X_print, X_<unit> one printed quantity: the text and unit as printed ("0.4500 in"), and the same in mm, mm2, N,
--                     Nm, MPa, per_K or value (a bare number). The builder fills the second from the first.
--   source, place     the citation: a row of source, and the table, clause or page in it.
--   basis             published: printed there. derived: computed by a stated rule. practice: common practice.
--   keyed             document: typed from the document. reproduction: from a copy of its table. memory: recalled and
--                     not read again. computed: by the rule that the note or place names.

CREATE TABLE authority (
  code TEXT NOT NULL PRIMARY KEY CONSTRAINT ck_authority_code CHECK (length(code) BETWEEN 2 AND 12),
  name TEXT NOT NULL CONSTRAINT ck_authority_name CHECK (length(name) > 0)
) STRICT, WITHOUT ROWID;

CREATE TABLE source (
  code TEXT NOT NULL PRIMARY KEY CONSTRAINT ck_source_code CHECK (length(code) > 0 AND code NOT GLOB '*[^a-z0-9.-]*'),
  authority TEXT NOT NULL CONSTRAINT fk_source_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  kind TEXT NOT NULL CONSTRAINT ck_source_kind CHECK (kind IN ('standard', 'handbook', 'government', 'supplier', 'own')),
  number TEXT CONSTRAINT ck_source_number CHECK (number IS NULL OR length(number) > 0),
  edition TEXT CONSTRAINT ck_source_edition CHECK (edition IS NULL OR length(edition) > 0),
  title TEXT NOT NULL CONSTRAINT ck_source_title CHECK (length(title) > 0),
  note TEXT
) STRICT, WITHOUT ROWID;

CREATE TABLE metadata (
  key TEXT NOT NULL PRIMARY KEY CONSTRAINT ck_metadata_key CHECK (length(key) > 0),
  value TEXT NOT NULL CONSTRAINT ck_metadata_value CHECK (length(value) > 0)
) STRICT, WITHOUT ROWID;

-- layout.major changes when a reader must change with it, layout.minor when a table or column was only added.
-- The reader's own numbers stand in src/clampbook/reference/impl.hpp; a test holds the two equal.
INSERT INTO metadata (key, value) VALUES
  ('layout.major', '1'),
  ('layout.minor', '1'),
  ('dataset.version', '2026.1'),
  ('dataset.date', '2026-11-25');

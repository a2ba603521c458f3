-- Trade words: what the workshop calls a thing, in five languages. A concept is one thing; its words all find it.

CREATE TABLE concept (
  authority TEXT NOT NULL CONSTRAINT fk_concept_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_concept_code CHECK (length(code) > 1 AND code NOT GLOB '*[^a-z_]*'),
  name TEXT NOT NULL CONSTRAINT ck_concept_name CHECK (length(name) > 1),
  role TEXT CONSTRAINT ck_concept_role
    CHECK (role IN ('drain', 'fill', 'level', 'vent', 'cover', 'pump', 'filter', 'sensor', 'flange', 'bearing', 'wheel',
      'brake', 'steering', 'mount', 'other')),
  kind TEXT NOT NULL CONSTRAINT ck_concept_kind
    CHECK (kind IN ('joint', 'part', 'unit', 'fluid', 'tool', 'feature', 'quantity', 'state', 'act')),
  source TEXT NOT NULL CONSTRAINT fk_concept_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_concept_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_concept_basis CHECK (basis = 'practice'),
  keyed TEXT NOT NULL CONSTRAINT ck_concept_keyed CHECK (keyed IN ('document', 'reproduction', 'memory')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_concept_code UNIQUE (code),
  CONSTRAINT uq_concept_name UNIQUE (name),
  CONSTRAINT ck_concept_role_kind CHECK (role IS NULL OR kind IN ('joint', 'part', 'unit'))
) STRICT, WITHOUT ROWID;

-- One word or phrase of one language. A word that the trade uses for two concepts stands under both, and the note of
-- each row names the other.
CREATE TABLE word (
  authority TEXT NOT NULL CONSTRAINT fk_word_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL,
  concept TEXT NOT NULL CONSTRAINT fk_word_concept REFERENCES concept (code) DEFERRABLE INITIALLY DEFERRED,
  language TEXT NOT NULL CONSTRAINT ck_word_language CHECK (language IN ('en', 'de', 'fr', 'es', 'sv')),
  word TEXT NOT NULL CONSTRAINT ck_word_word
    CHECK (length(word) > 1 AND word = trim(word) AND word NOT GLOB '*  *' AND word NOT GLOB '*[;/,*]*'),
  preferred TEXT NOT NULL CONSTRAINT ck_word_preferred CHECK (preferred IN ('yes', 'no')),
  source TEXT NOT NULL CONSTRAINT fk_word_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_word_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_word_basis CHECK (basis = 'practice'),
  keyed TEXT NOT NULL CONSTRAINT ck_word_keyed CHECK (keyed IN ('document', 'reproduction', 'memory')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT ck_word_code CHECK (code = concept || '/' || language || '/' || word)
) STRICT, WITHOUT ROWID;

CREATE UNIQUE INDEX uq_word_preferred ON word (concept, language) WHERE preferred = 'yes';
CREATE UNIQUE INDEX uq_word_spelling ON word (concept, language, lower(word));

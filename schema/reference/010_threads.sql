-- Screw threads. Only what a standard fixes is keyed: diameter and pitch. Pitch diameter, minor diameters and stress
-- area follow by formula in the engine; where a print of them was read it is kept here to check the formula.

CREATE TABLE thread (
  authority TEXT NOT NULL CONSTRAINT fk_thread_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_thread_code CHECK (length(code) > 1),
  name TEXT NOT NULL CONSTRAINT ck_thread_name CHECK (length(name) > 1),
  system TEXT NOT NULL CONSTRAINT ck_thread_system CHECK (system IN ('M', 'UN', 'G', 'R', 'NPT')),
  series TEXT NOT NULL CONSTRAINT ck_thread_series
    CHECK (series IN ('coarse', 'fine', 'UNC', 'UNF', '8-UN', 'parallel pipe', 'taper pipe')),
  selection TEXT CONSTRAINT ck_thread_selection CHECK (selection IS NULL OR selection = 'ISO 262'),
  size TEXT NOT NULL CONSTRAINT ck_thread_size CHECK (length(size) > 0),
  major_diameter_print TEXT NOT NULL,
  major_diameter_mm REAL NOT NULL CONSTRAINT ck_thread_major CHECK (major_diameter_mm BETWEEN 0.9 AND 200),
  pitch_print TEXT,
  pitch_mm REAL CONSTRAINT ck_thread_pitch CHECK (pitch_mm BETWEEN 0.15 AND 8),
  threads_per_inch_print TEXT,
  threads_per_inch_value REAL CONSTRAINT ck_thread_tpi CHECK (threads_per_inch_value BETWEEN 4 AND 80),
  pitch_diameter_print TEXT,
  pitch_diameter_mm REAL,
  minor_internal_print TEXT,
  minor_internal_mm REAL,
  minor_external_print TEXT,
  minor_external_mm REAL,
  stress_area_print TEXT,
  stress_area_mm2 REAL CONSTRAINT ck_thread_stress_area CHECK (stress_area_mm2 > 0),
  gauge_length_print TEXT,
  gauge_length_mm REAL CONSTRAINT ck_thread_gauge_length CHECK (gauge_length_mm > 0),
  useful_length_print TEXT,
  useful_length_mm REAL CONSTRAINT ck_thread_useful_length CHECK (useful_length_mm > 0),
  source TEXT NOT NULL CONSTRAINT fk_thread_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_thread_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_thread_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_thread_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_thread_code UNIQUE (code),
  CONSTRAINT ck_thread_one_pitch CHECK ((pitch_mm IS NULL) <> (threads_per_inch_value IS NULL)),
  CONSTRAINT ck_thread_diameters CHECK (
    (pitch_diameter_mm IS NULL OR pitch_diameter_mm < major_diameter_mm) AND
    (minor_internal_mm IS NULL OR pitch_diameter_mm IS NULL OR minor_internal_mm < pitch_diameter_mm) AND
    (minor_external_mm IS NULL OR minor_internal_mm IS NULL OR minor_external_mm < minor_internal_mm)),
  CONSTRAINT ck_thread_series_of_system CHECK (
    (system = 'M' AND series IN ('coarse', 'fine')) OR (system = 'UN' AND series IN ('UNC', 'UNF', '8-UN')) OR
    (system = 'G' AND series = 'parallel pipe') OR (system IN ('R', 'NPT') AND series = 'taper pipe')),
  CONSTRAINT ck_thread_selection_of_system CHECK (selection IS NULL OR system = 'M'),
  CONSTRAINT ck_thread_pipe_lengths CHECK (series = 'taper pipe' OR (gauge_length_mm IS NULL AND useful_length_mm IS NULL))
) STRICT, WITHOUT ROWID;

-- A tolerance printed in ISO 965-1: es of position g, and the grade-6 tolerances Td, TD1, Td2, TD2. The range of
-- nominal diameters is "over ... up to and including"; both are absent where the tolerance depends on the pitch alone.
CREATE TABLE thread_tolerance (
  authority TEXT NOT NULL CONSTRAINT fk_thread_tolerance_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_thread_tolerance_code CHECK (length(code) > 0),
  tolerance TEXT NOT NULL CONSTRAINT ck_thread_tolerance_kind CHECK (tolerance IN ('es g', 'Td 6', 'TD1 6', 'Td2 6', 'TD2 6')),
  over_print TEXT,
  over_mm REAL,
  up_to_print TEXT,
  up_to_mm REAL,
  pitch_print TEXT NOT NULL,
  pitch_mm REAL NOT NULL CONSTRAINT ck_thread_tolerance_pitch CHECK (pitch_mm BETWEEN 0.15 AND 8),
  size_print TEXT NOT NULL,
  size_mm REAL NOT NULL CONSTRAINT ck_thread_tolerance_size CHECK (size_mm BETWEEN 0.005 AND 1),
  source TEXT NOT NULL CONSTRAINT fk_thread_tolerance_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_thread_tolerance_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_thread_tolerance_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_thread_tolerance_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT ck_thread_tolerance_range CHECK ((over_mm IS NULL) = (up_to_mm IS NULL) AND (over_mm IS NULL OR over_mm < up_to_mm))
) STRICT, WITHOUT ROWID;

-- ISO 228-1 tolerances, which hang on the pitch alone up to G2. The internal thread's are above its basic size, the external
-- thread's under it; class B, the wider, is what plugs are made to.
CREATE TABLE pipe_tolerance (
  authority TEXT NOT NULL CONSTRAINT fk_pipe_tolerance_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_pipe_tolerance_code CHECK (length(code) > 0),
  threads_per_inch_print TEXT NOT NULL,
  threads_per_inch_value REAL NOT NULL CONSTRAINT ck_pipe_tolerance_tpi CHECK (threads_per_inch_value BETWEEN 8 AND 30),
  pitch_internal_print TEXT NOT NULL,
  pitch_internal_mm REAL NOT NULL CONSTRAINT ck_pipe_tolerance_pitch_internal CHECK (pitch_internal_mm BETWEEN 0.05 AND 0.5),
  pitch_external_print TEXT NOT NULL,
  pitch_external_mm REAL NOT NULL CONSTRAINT ck_pipe_tolerance_pitch_external
    CHECK (abs(pitch_external_mm - 2 * pitch_internal_mm) < 0.0015),
  minor_internal_print TEXT NOT NULL,
  minor_internal_mm REAL NOT NULL CONSTRAINT ck_pipe_tolerance_minor CHECK (minor_internal_mm > pitch_external_mm),
  major_external_print TEXT NOT NULL,
  major_external_mm REAL NOT NULL CONSTRAINT ck_pipe_tolerance_major CHECK (abs(major_external_mm - pitch_external_mm) < 0.0015),
  source TEXT NOT NULL CONSTRAINT fk_pipe_tolerance_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_pipe_tolerance_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_pipe_tolerance_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_pipe_tolerance_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_pipe_tolerance UNIQUE (threads_per_inch_value)
) STRICT, WITHOUT ROWID;

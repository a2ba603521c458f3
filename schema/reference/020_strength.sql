-- Strength of screws and nuts: property classes with the sizes that each is made in, the printed loads and the smallest
-- breaking torques, and the places where a print is known to differ from the rule.

CREATE TABLE property_class (
  authority TEXT NOT NULL CONSTRAINT fk_property_class_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_property_class_code CHECK (length(code) > 0),
  class TEXT NOT NULL CONSTRAINT ck_property_class_class CHECK (length(class) > 0),
  thread_system TEXT NOT NULL CONSTRAINT ck_property_class_system CHECK (thread_system IN ('M', 'UN')),
  over_print TEXT,
  over_mm REAL CONSTRAINT ck_property_class_over CHECK (over_mm > 0),
  from_print TEXT,
  from_mm REAL CONSTRAINT ck_property_class_from CHECK (from_mm > 0),
  up_to_print TEXT NOT NULL,
  up_to_mm REAL NOT NULL CONSTRAINT ck_property_class_up_to CHECK (up_to_mm > 0),
  tensile_strength_nominal_print TEXT,
  tensile_strength_nominal_MPa REAL,
  tensile_strength_print TEXT NOT NULL,
  tensile_strength_MPa REAL NOT NULL CONSTRAINT ck_property_class_rm CHECK (tensile_strength_MPa BETWEEN 200 AND 1600),
  yield_kind TEXT NOT NULL CONSTRAINT ck_property_class_yield_kind CHECK (yield_kind IN ('ReL', 'Rpf', 'Rp0.2', 'yield')),
  yield_strength_nominal_print TEXT,
  yield_strength_nominal_MPa REAL,
  yield_strength_print TEXT NOT NULL,
  yield_strength_MPa REAL NOT NULL CONSTRAINT ck_property_class_yield CHECK (yield_strength_MPa BETWEEN 100 AND 1500),
  proof_stress_print TEXT,
  proof_stress_MPa REAL CONSTRAINT ck_property_class_proof CHECK (proof_stress_MPa BETWEEN 100 AND 1500),
  hardness_min_print TEXT,
  hardness_min_value REAL,
  hardness_max_print TEXT,
  hardness_max_value REAL,
  hardness_scale TEXT CONSTRAINT ck_property_class_hardness_scale CHECK (hardness_scale IN ('HV', 'HRB', 'HRC')),
  elongation_print TEXT,
  elongation_value REAL,
  source TEXT NOT NULL CONSTRAINT fk_property_class_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_property_class_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_property_class_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_property_class_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT ck_property_class_lower CHECK ((over_mm IS NULL) <> (from_mm IS NULL)),
  CONSTRAINT ck_property_class_order CHECK (
    yield_strength_MPa < tensile_strength_MPa AND
    (proof_stress_MPa IS NULL OR proof_stress_MPa <= yield_strength_MPa) AND
    coalesce(over_mm, from_mm, 0) < up_to_mm),
  CONSTRAINT ck_property_class_hardness CHECK (
    (hardness_min_value IS NULL) = (hardness_max_value IS NULL) AND
    (hardness_min_value IS NULL OR (hardness_min_value < hardness_max_value AND hardness_scale IS NOT NULL)))
) STRICT, WITHOUT ROWID;

-- The printed proof load and minimum tensile load of one thread in one class.
CREATE TABLE bolt_load (
  authority TEXT NOT NULL CONSTRAINT fk_bolt_load_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_bolt_load_code CHECK (length(code) > 0),
  thread TEXT NOT NULL CONSTRAINT fk_bolt_load_thread REFERENCES thread (code) DEFERRABLE INITIALLY DEFERRED,
  class TEXT NOT NULL CONSTRAINT ck_bolt_load_class CHECK (length(class) > 0),
  stress_area_print TEXT NOT NULL,
  stress_area_mm2 REAL NOT NULL CONSTRAINT ck_bolt_load_area CHECK (stress_area_mm2 > 0),
  proof_load_print TEXT NOT NULL,
  proof_load_N REAL NOT NULL CONSTRAINT ck_bolt_load_proof CHECK (proof_load_N > 0),
  proof_load_basis TEXT NOT NULL CONSTRAINT ck_bolt_load_proof_basis CHECK (proof_load_basis IN ('published', 'derived')),
  tensile_load_print TEXT NOT NULL,
  tensile_load_N REAL NOT NULL CONSTRAINT ck_bolt_load_tensile CHECK (tensile_load_N > proof_load_N),
  tensile_load_basis TEXT NOT NULL CONSTRAINT ck_bolt_load_tensile_basis CHECK (tensile_load_basis IN ('published', 'derived')),
  source TEXT NOT NULL CONSTRAINT fk_bolt_load_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_bolt_load_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_bolt_load_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_bolt_load_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_bolt_load UNIQUE (authority, thread, class)
) STRICT, WITHOUT ROWID;

-- The proof stress of a nut of one thread, class and style, and the printed proof load where there is one. A fine nut has
-- no load: its stress is printed for a range of sizes.
CREATE TABLE nut_load (
  authority TEXT NOT NULL CONSTRAINT fk_nut_load_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_nut_load_code CHECK (length(code) > 0),
  thread TEXT NOT NULL CONSTRAINT fk_nut_load_thread REFERENCES thread (code) DEFERRABLE INITIALLY DEFERRED,
  class TEXT NOT NULL CONSTRAINT ck_nut_load_class CHECK (class IN ('4', '5', '6', '8', '9', '10', '12')),
  style TEXT NOT NULL CONSTRAINT ck_nut_load_style CHECK (style IN ('1', '2')),
  proof_stress_print TEXT NOT NULL,
  proof_stress_MPa REAL NOT NULL CONSTRAINT ck_nut_load_stress CHECK (proof_stress_MPa BETWEEN 300 AND 1300),
  proof_load_print TEXT,
  proof_load_N REAL CONSTRAINT ck_nut_load_proof CHECK (proof_load_N > 0),
  proof_load_basis TEXT CONSTRAINT ck_nut_load_proof_basis CHECK (proof_load_basis IN ('published', 'derived')),
  source TEXT NOT NULL CONSTRAINT fk_nut_load_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_nut_load_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_nut_load_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_nut_load_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_nut_load UNIQUE (authority, thread, class, style),
  CONSTRAINT ck_nut_load_load_has_basis CHECK ((proof_load_N IS NULL) = (proof_load_basis IS NULL))
) STRICT, WITHOUT ROWID;

-- The smallest torque that may break a screw in torsion. strength_ratio is the torsional strength over the tensile
-- strength of the class, where the standard gives it.
CREATE TABLE breaking_torque (
  authority TEXT NOT NULL CONSTRAINT fk_breaking_torque_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_breaking_torque_code CHECK (length(code) > 0),
  thread TEXT NOT NULL CONSTRAINT fk_breaking_torque_thread REFERENCES thread (code) DEFERRABLE INITIALLY DEFERRED,
  class TEXT NOT NULL CONSTRAINT ck_breaking_torque_class CHECK (length(class) > 0),
  torque_print TEXT NOT NULL,
  torque_Nm REAL NOT NULL CONSTRAINT ck_breaking_torque_torque CHECK (torque_Nm BETWEEN 0.01 AND 1000),
  strength_ratio_print TEXT,
  strength_ratio_value REAL CONSTRAINT ck_breaking_torque_ratio CHECK (strength_ratio_value BETWEEN 0.5 AND 1),
  source TEXT NOT NULL CONSTRAINT fk_breaking_torque_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_breaking_torque_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_breaking_torque_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_breaking_torque_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_breaking_torque UNIQUE (authority, thread, class)
) STRICT, WITHOUT ROWID;

-- Where a print is known to differ from what the rule gives. The print stands in the table; a check skips the field named
-- here, and another fails when the difference is gone.
CREATE TABLE known_difference (
  table_name TEXT NOT NULL CONSTRAINT ck_known_difference_table CHECK (table_name IN ('thread', 'bolt_load', 'nut_load')),
  code TEXT NOT NULL CONSTRAINT ck_known_difference_code CHECK (length(code) > 0),
  field TEXT NOT NULL CONSTRAINT ck_known_difference_field CHECK (length(field) > 0),
  print TEXT NOT NULL CONSTRAINT ck_known_difference_print CHECK (length(print) > 0),
  expected TEXT NOT NULL CONSTRAINT ck_known_difference_expected CHECK (length(expected) > 0),
  note TEXT NOT NULL CONSTRAINT ck_known_difference_note CHECK (length(note) > 0),
  PRIMARY KEY (table_name, code, field),
  CONSTRAINT ck_known_difference_differs CHECK (print <> expected)
) STRICT, WITHOUT ROWID;

-- What the rules give beside each print, for the checks alone: the basic profile (ISO 68-1, ASME B1.1), the taper pipe
-- thread of ASME B1.20.1, and load = stress area x stress, rounded as each standard rounds. found and expected are in mm
-- or N; allowed is half a step of the print, and a little more where the standard rounds the thread height first.
CREATE VIEW print_by_rule AS
WITH
  profile AS (
    SELECT *, coalesce(pitch_mm, 25.4 / threads_per_inch_value) AS p FROM thread),
  dimension AS (
    SELECT code, 'pitch_diameter' AS field, pitch_diameter_print AS print, pitch_diameter_mm AS found,
           major_diameter_mm - p * CASE WHEN system IN ('M', 'UN') THEN 0.649519053 ELSE 0.640327 END AS expected,
           CASE system WHEN 'M' THEN 0.00051 WHEN 'UN' THEN 0.00128 ELSE 0.0016 END AS allowed
      FROM profile WHERE system <> 'NPT'
    UNION ALL
    SELECT code, 'minor_internal', minor_internal_print, minor_internal_mm,
           major_diameter_mm - p * CASE WHEN system IN ('M', 'UN') THEN 1.082531755 ELSE 1.280654 END,
           CASE system WHEN 'M' THEN 0.00051 WHEN 'UN' THEN 0.00128 ELSE 0.0016 END
      FROM profile WHERE system <> 'NPT'
    UNION ALL
    SELECT code, 'minor_external', minor_external_print, minor_external_mm,
           major_diameter_mm - p * CASE system WHEN 'M' THEN 1.226869322 ELSE 1.190784930 END,
           CASE system WHEN 'M' THEN 0.00051 ELSE 0.00128 END
      FROM profile WHERE system IN ('M', 'UN')
    UNION ALL
    SELECT code, 'pitch_diameter', pitch_diameter_print, pitch_diameter_mm,
           major_diameter_mm - (0.05 * major_diameter_mm + 1.1 * 25.4) * p / 25.4 + gauge_length_mm / 16, 0.00026
      FROM profile WHERE system = 'NPT'
    UNION ALL
    SELECT code, 'useful_length', useful_length_print, useful_length_mm,
           (0.8 * major_diameter_mm + 6.8 * 25.4) * p / 25.4, 0.0014
      FROM profile WHERE system = 'NPT'),
  class_of AS (
    SELECT b.authority, b.code, c.proof_stress_MPa, c.tensile_strength_MPa
      FROM bolt_load AS b JOIN thread AS t ON t.code = b.thread
      JOIN property_class AS c ON c.authority = b.authority AND c.class = b.class AND c.thread_system = t.system
       AND t.major_diameter_mm > coalesce(c.over_mm, c.from_mm - 0.001)
       AND t.major_diameter_mm <= c.up_to_mm + 0.001),
  load AS (
    SELECT 'bolt_load' AS table_name, b.authority, b.code, 'proof_load' AS field, b.proof_load_print AS print,
           b.proof_load_N AS found, b.stress_area_mm2 * c.proof_stress_MPa AS product
      FROM bolt_load AS b JOIN class_of AS c USING (authority, code)
    UNION ALL
    SELECT 'bolt_load', b.authority, b.code, 'tensile_load', b.tensile_load_print, b.tensile_load_N,
           b.stress_area_mm2 * c.tensile_strength_MPa
      FROM bolt_load AS b JOIN class_of AS c USING (authority, code)
    UNION ALL
    SELECT DISTINCT 'nut_load', n.authority, n.code, 'proof_load', n.proof_load_print, n.proof_load_N,
           b.stress_area_mm2 * n.proof_stress_MPa
      FROM nut_load AS n JOIN bolt_load AS b ON b.thread = n.thread WHERE n.proof_load_N IS NOT NULL),
  stepped AS (
    SELECT table_name, code, field, print, found, 1.0 AS unit, product AS x,
           CASE WHEN table_name = 'nut_load'
                THEN CASE WHEN product < 1e4 THEN 50 WHEN product < 1e6 THEN 100 ELSE 1000 END
                WHEN product < 1e4 THEN 10 WHEN product < 1e5 THEN 100 WHEN product < 1e6 THEN 1000 ELSE 10000 END AS step
      FROM load WHERE authority = 'ISO'
    UNION ALL
    SELECT table_name, code, field, print, found, 4.4482216152605, product / 4.4482216152605,
           CASE WHEN product / 4.4482216152605 < 1e4 THEN 50 ELSE 100 END
      FROM load WHERE authority = 'SAE')
SELECT 'thread' AS table_name, code, field, print, found, expected, allowed FROM dimension WHERE found IS NOT NULL
UNION ALL
SELECT table_name, code, field, print, found, round(x / step + 1e-7) * step * unit, 0.5 * unit FROM stepped;

-- Shear strength of a screw's thread over its tensile strength, by class.
CREATE TABLE screw_shear (
  authority TEXT NOT NULL CONSTRAINT fk_screw_shear_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_screw_shear_code CHECK (length(code) > 0), -- the property class
  ratio_print TEXT NOT NULL,
  ratio_value REAL NOT NULL CONSTRAINT ck_screw_shear_ratio CHECK (ratio_value BETWEEN 0.5 AND 0.8),
  source TEXT NOT NULL CONSTRAINT fk_screw_shear_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_screw_shear_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_screw_shear_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_screw_shear_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code)
) STRICT, WITHOUT ROWID;

-- Materials that a screw or plug is threaded into, and the embedding of surfaces.

-- A row's source, place, basis and keyed tell of its strengths. The other figures come from elsewhere and have their
-- own: shear_ (shear strength and its ratio to the tensile strength printed beside it: shear_basis tells of the ratio,
-- shear_keyed of the strength behind it), elastic_ (modulus and expansion) and pressure_ (limiting surface pressure
-- under a head). Moduli are printed in GPa and keyed in MPa. The expansion is the mean from 20 to 100 °C. One material
-- of each family is its representative, taken where only the family is named.
CREATE TABLE housing (
  authority TEXT NOT NULL CONSTRAINT fk_housing_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_housing_code CHECK (length(code) > 0),
  name TEXT NOT NULL CONSTRAINT ck_housing_name CHECK (length(name) > 0),
  family TEXT NOT NULL CONSTRAINT ck_housing_family CHECK (
    family IN ('cast aluminium', 'wrought aluminium', 'grey iron', 'ductile iron', 'steel', 'stainless steel')),
  representative TEXT NOT NULL CONSTRAINT ck_housing_representative CHECK (representative IN ('yes', 'no')),
  condition TEXT NOT NULL CONSTRAINT ck_housing_condition CHECK (length(condition) > 0),
  tensile_strength_print TEXT NOT NULL,
  tensile_strength_MPa REAL NOT NULL CONSTRAINT ck_housing_rm CHECK (tensile_strength_MPa BETWEEN 80 AND 1500),
  yield_strength_print TEXT,
  yield_strength_MPa REAL CONSTRAINT ck_housing_yield CHECK (yield_strength_MPa > 30 AND
    yield_strength_MPa < tensile_strength_MPa),
  shear_strength_print TEXT,
  shear_strength_MPa REAL CONSTRAINT ck_housing_shear_strength CHECK (shear_strength_MPa BETWEEN 50 AND 1000),
  shear_ratio_print TEXT NOT NULL,
  shear_ratio_value REAL NOT NULL CONSTRAINT ck_housing_shear_ratio CHECK (shear_ratio_value BETWEEN 0.5 AND 1.5),
  shear_source TEXT NOT NULL CONSTRAINT fk_housing_shear_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  shear_place TEXT NOT NULL CONSTRAINT ck_housing_shear_place CHECK (length(shear_place) > 0),
  shear_basis TEXT NOT NULL CONSTRAINT ck_housing_shear_basis CHECK (shear_basis IN ('published', 'derived', 'practice')),
  shear_keyed TEXT NOT NULL CONSTRAINT ck_housing_shear_keyed
    CHECK (shear_keyed IN ('document', 'reproduction', 'memory', 'computed')),
  modulus_print TEXT NOT NULL,
  modulus_MPa REAL NOT NULL CONSTRAINT ck_housing_modulus CHECK (modulus_MPa BETWEEN 40000 AND 230000),
  expansion_print TEXT NOT NULL,
  expansion_per_K REAL NOT NULL CONSTRAINT ck_housing_expansion CHECK (expansion_per_K BETWEEN 0.000005 AND 0.00003),
  elastic_source TEXT NOT NULL CONSTRAINT fk_housing_elastic_source
    REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  elastic_place TEXT NOT NULL CONSTRAINT ck_housing_elastic_place CHECK (length(elastic_place) > 0),
  elastic_keyed TEXT NOT NULL CONSTRAINT ck_housing_elastic_keyed
    CHECK (elastic_keyed IN ('document', 'reproduction', 'memory', 'computed')),
  limiting_pressure_print TEXT,
  limiting_pressure_MPa REAL CONSTRAINT ck_housing_pressure CHECK (limiting_pressure_MPa BETWEEN 100 AND 2000),
  pressure_source TEXT CONSTRAINT fk_housing_pressure_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  pressure_place TEXT CONSTRAINT ck_housing_pressure_place CHECK (pressure_place IS NULL OR length(pressure_place) > 0),
  pressure_keyed TEXT CONSTRAINT ck_housing_pressure_keyed
    CHECK (pressure_keyed IN ('document', 'reproduction', 'memory', 'computed')),
  source TEXT NOT NULL CONSTRAINT fk_housing_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_housing_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_housing_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_housing_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_housing_code UNIQUE (code),
  CONSTRAINT ck_housing_pressure_cited CHECK (
    (limiting_pressure_MPa IS NULL) = (pressure_source IS NULL) AND
    (limiting_pressure_MPa IS NULL) = (pressure_place IS NULL) AND
    (limiting_pressure_MPa IS NULL) = (pressure_keyed IS NULL))
) STRICT, WITHOUT ROWID;

-- How much one surface sinks in after tightening, by roughness Rz, kind of load and place in the joint.
CREATE TABLE embedding (
  authority TEXT NOT NULL CONSTRAINT fk_embedding_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_embedding_code CHECK (length(code) > 0),
  roughness TEXT NOT NULL CONSTRAINT ck_embedding_roughness CHECK (
    roughness IN ('Rz < 10 µm', '10 µm <= Rz < 40 µm', '40 µm <= Rz < 160 µm')),
  load TEXT NOT NULL CONSTRAINT ck_embedding_load CHECK (load IN ('axial', 'shear')),
  location TEXT NOT NULL CONSTRAINT ck_embedding_location CHECK (location IN ('thread', 'head or nut', 'interface')),
  amount_print TEXT NOT NULL,
  amount_mm REAL NOT NULL CONSTRAINT ck_embedding_amount CHECK (amount_mm BETWEEN 0.0005 AND 0.02),
  source TEXT NOT NULL CONSTRAINT fk_embedding_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_embedding_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_embedding_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_embedding_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_embedding UNIQUE (authority, roughness, load, location)
) STRICT, WITHOUT ROWID;

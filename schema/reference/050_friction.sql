-- Friction, nut factors, and the spread of preload by the way of tightening.

CREATE TABLE friction_class (
  authority TEXT NOT NULL CONSTRAINT fk_friction_class_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_friction_class_code CHECK (length(code) > 0),
  low_print TEXT NOT NULL,
  low_value REAL NOT NULL CONSTRAINT ck_friction_class_low CHECK (low_value BETWEEN 0.02 AND 0.5),
  high_print TEXT,
  high_value REAL CONSTRAINT ck_friction_class_high CHECK (high_value > low_value AND high_value <= 0.6),
  condition TEXT NOT NULL CONSTRAINT ck_friction_class_condition CHECK (length(condition) > 0),
  source TEXT NOT NULL CONSTRAINT fk_friction_class_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_friction_class_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_friction_class_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_friction_class_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code)
) STRICT, WITHOUT ROWID;

-- The factor K of torque = K x preload x nominal diameter. The code is our short name of the condition. A source gives
-- one figure (value) or a range (low and high), seldom both; sources are never mixed in one row.
CREATE TABLE nut_factor (
  authority TEXT NOT NULL CONSTRAINT fk_nut_factor_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_nut_factor_code CHECK (length(code) > 0),
  condition TEXT NOT NULL CONSTRAINT ck_nut_factor_condition CHECK (length(condition) > 0),
  low_print TEXT,
  low_value REAL CONSTRAINT ck_nut_factor_low CHECK (low_value BETWEEN 0.05 AND 0.55),
  high_print TEXT,
  high_value REAL CONSTRAINT ck_nut_factor_high CHECK (high_value BETWEEN 0.05 AND 0.55),
  value_print TEXT,
  value_value REAL CONSTRAINT ck_nut_factor_value CHECK (value_value BETWEEN 0.05 AND 0.55),
  source TEXT NOT NULL CONSTRAINT fk_nut_factor_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_nut_factor_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_nut_factor_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_nut_factor_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_nut_factor_code UNIQUE (code),
  CONSTRAINT ck_nut_factor_some CHECK (
    (low_value IS NULL) = (high_value IS NULL) AND coalesce(value_value, low_value) IS NOT NULL),
  CONSTRAINT ck_nut_factor_order CHECK (
    low_value IS NULL OR (low_value < high_value AND coalesce(value_value, low_value) BETWEEN low_value AND high_value))
) STRICT, WITHOUT ROWID;

-- The spread of preload. alpha is the tightening factor, largest over smallest preload; scatter is the half range on
-- either side of the mean. A source gives the one or the other. low and high are equal where one figure is printed.
CREATE TABLE tightening_scatter (
  authority TEXT NOT NULL CONSTRAINT fk_tightening_scatter_authority
    REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_tightening_scatter_code CHECK (length(code) > 0),
  method TEXT NOT NULL CONSTRAINT ck_tightening_scatter_method CHECK (length(method) > 0),
  alpha_low_print TEXT,
  alpha_low_value REAL CONSTRAINT ck_tightening_scatter_alpha_low CHECK (alpha_low_value BETWEEN 1 AND 5),
  alpha_high_print TEXT,
  alpha_high_value REAL CONSTRAINT ck_tightening_scatter_alpha_high
    CHECK (alpha_high_value >= alpha_low_value AND alpha_high_value <= 5),
  scatter_low_print TEXT,
  scatter_low_value REAL CONSTRAINT ck_tightening_scatter_low CHECK (scatter_low_value BETWEEN 0.005 AND 0.7),
  scatter_high_print TEXT,
  scatter_high_value REAL CONSTRAINT ck_tightening_scatter_high
    CHECK (scatter_high_value >= scatter_low_value AND scatter_high_value <= 0.7),
  source TEXT NOT NULL CONSTRAINT fk_tightening_scatter_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_tightening_scatter_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_tightening_scatter_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_tightening_scatter_keyed
    CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_tightening_scatter_code UNIQUE (code),
  CONSTRAINT ck_tightening_scatter_some CHECK (
    (alpha_low_value IS NULL) = (alpha_high_value IS NULL) AND
    (scatter_low_value IS NULL) = (scatter_high_value IS NULL) AND
    (alpha_low_value IS NULL) <> (scatter_low_value IS NULL))
) STRICT, WITHOUT ROWID;

-- The largest deviation that a torque tool may show. ISO 6789: type I tools indicate, type II tools are set. The limit
-- in deviation_small stands for tools of at most 10 N·m, deviation for all others.
CREATE TABLE tool_accuracy (
  authority TEXT NOT NULL CONSTRAINT fk_tool_accuracy_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_tool_accuracy_code CHECK (length(code) > 0),
  type TEXT CONSTRAINT ck_tool_accuracy_type CHECK (type IN ('I', 'II')),
  class TEXT CONSTRAINT ck_tool_accuracy_class CHECK (class IN ('A', 'B', 'C', 'D', 'E', 'F', 'G')),
  tool TEXT NOT NULL CONSTRAINT ck_tool_accuracy_tool CHECK (length(tool) > 0),
  deviation_small_print TEXT,
  deviation_small_value REAL CONSTRAINT ck_tool_accuracy_small CHECK (deviation_small_value BETWEEN 0.005 AND 0.1),
  deviation_print TEXT NOT NULL,
  deviation_value REAL NOT NULL CONSTRAINT ck_tool_accuracy_deviation CHECK (deviation_value BETWEEN 0.005 AND 0.1),
  source TEXT NOT NULL CONSTRAINT fk_tool_accuracy_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_tool_accuracy_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_tool_accuracy_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_tool_accuracy_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT ck_tool_accuracy_classed CHECK (
    (type IS NULL) = (class IS NULL) AND (deviation_small_value IS NULL OR deviation_value <= deviation_small_value))
) STRICT, WITHOUT ROWID;

-- The share of the proof load that is usually taken as preload where nobody prescribes one.
CREATE TABLE preload_choice (
  authority TEXT NOT NULL CONSTRAINT fk_preload_choice_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_preload_choice_code CHECK (code IN ('permanent', 'reused')),
  words TEXT NOT NULL CONSTRAINT ck_preload_choice_words CHECK (length(words) > 0),
  share_print TEXT NOT NULL,
  share_value REAL NOT NULL CONSTRAINT ck_preload_choice_share CHECK (share_value BETWEEN 0.3 AND 1),
  source TEXT NOT NULL CONSTRAINT fk_preload_choice_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_preload_choice_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_preload_choice_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_preload_choice_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code)
) STRICT, WITHOUT ROWID;

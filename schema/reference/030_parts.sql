-- Parts of a joint: plugs and their sealing rings, heads and nuts, washers, clearance holes, port plugs, and the
-- everyday spellings under which curated rows are found. A dimension is nominal unless its name ends in _min or _max.
-- Where a column `size` names a metric thread it is the size alone ("M18"), whatever the pitch.

-- What a plug looks like and by what it seals: a ring under its collar, an o-ring in the port, or its own thread.
CREATE TABLE plug_form (
  authority TEXT NOT NULL CONSTRAINT fk_plug_form_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_plug_form_code CHECK (length(code) > 0),
  name TEXT NOT NULL CONSTRAINT ck_plug_form_name CHECK (length(name) > 0),
  drive TEXT NOT NULL CONSTRAINT ck_plug_form_drive CHECK (drive IN ('hexagon', 'hexagon socket', 'square')),
  seal TEXT NOT NULL CONSTRAINT ck_plug_form_seal CHECK (seal IN ('ring', 'o-ring', 'thread')),
  standard TEXT CONSTRAINT ck_plug_form_standard CHECK (standard IS NULL OR length(standard) > 0),
  words TEXT NOT NULL CONSTRAINT ck_plug_form_words CHECK (length(words) > 0),
  source TEXT NOT NULL CONSTRAINT fk_plug_form_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_plug_form_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_plug_form_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_plug_form_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_plug_form_code UNIQUE (code)
) STRICT, WITHOUT ROWID;

-- across_flats is the hexagon or the hexagon socket. head_height is the hexagon alone, above the collar. A plug with
-- thread_form `taper` has the taper version of the thread that is named. The mass, in kg for 1000 plugs of steel, is
-- kept where it was read, as a check of the dimensions.
CREATE TABLE plug (
  authority TEXT NOT NULL CONSTRAINT fk_plug_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_plug_code CHECK (length(code) > 0),
  standard TEXT NOT NULL CONSTRAINT ck_plug_standard CHECK (length(standard) > 0),
  form TEXT NOT NULL CONSTRAINT fk_plug_form REFERENCES plug_form (code) DEFERRABLE INITIALLY DEFERRED,
  thread TEXT NOT NULL CONSTRAINT fk_plug_thread REFERENCES thread (code) DEFERRABLE INITIALLY DEFERRED,
  thread_form TEXT NOT NULL CONSTRAINT ck_plug_thread_form CHECK (thread_form IN ('parallel', 'taper')),
  across_flats_print TEXT NOT NULL,
  across_flats_mm REAL NOT NULL CONSTRAINT ck_plug_across_flats CHECK (across_flats_mm BETWEEN 2 AND 100),
  collar_diameter_print TEXT,
  collar_diameter_mm REAL CONSTRAINT ck_plug_collar_diameter CHECK (collar_diameter_mm BETWEEN 5 AND 120),
  collar_height_print TEXT,
  collar_height_mm REAL CONSTRAINT ck_plug_collar_height CHECK (collar_height_mm BETWEEN 1 AND 20),
  thread_length_print TEXT NOT NULL,
  thread_length_mm REAL NOT NULL CONSTRAINT ck_plug_thread_length CHECK (thread_length_mm BETWEEN 3 AND 60),
  head_height_print TEXT,
  head_height_mm REAL CONSTRAINT ck_plug_head_height CHECK (head_height_mm BETWEEN 2 AND 40),
  mass_kg_per_1000_print TEXT,
  mass_kg_per_1000_value REAL CONSTRAINT ck_plug_mass CHECK (mass_kg_per_1000_value > 0),
  source TEXT NOT NULL CONSTRAINT fk_plug_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_plug_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_plug_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_plug_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_plug UNIQUE (standard, thread),
  CONSTRAINT ck_plug_collar CHECK ((collar_diameter_mm IS NULL) = (collar_height_mm IS NULL))
) STRICT, WITHOUT ROWID;

-- What a ring is made of. The seating stress is the stress that the code named in seating_source asks for to seat a
-- flat gasket of that metal (y there): a design aid, not a measured one. It is absent where no figure was found.
CREATE TABLE ring_material (
  authority TEXT NOT NULL CONSTRAINT fk_ring_material_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_ring_material_code CHECK (length(code) > 0),
  name TEXT NOT NULL CONSTRAINT ck_ring_material_name CHECK (length(name) > 0),
  words TEXT NOT NULL CONSTRAINT ck_ring_material_words CHECK (length(words) > 0),
  renew TEXT NOT NULL CONSTRAINT ck_ring_material_renew CHECK (length(renew) > 0),
  seating_stress_print TEXT,
  seating_stress_MPa REAL CONSTRAINT ck_ring_material_seating_stress CHECK (seating_stress_MPa BETWEEN 1 AND 250),
  seating_source TEXT CONSTRAINT fk_ring_material_seating_source
    REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  seating_place TEXT CONSTRAINT ck_ring_material_seating_place CHECK (seating_place IS NULL OR length(seating_place) > 0),
  seating_keyed TEXT CONSTRAINT ck_ring_material_seating_keyed
    CHECK (seating_keyed IN ('document', 'reproduction', 'memory', 'computed')),
  source TEXT NOT NULL CONSTRAINT fk_ring_material_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_ring_material_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_ring_material_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_ring_material_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_ring_material_code UNIQUE (code),
  CONSTRAINT ck_ring_material_seating CHECK (
    (seating_stress_MPa IS NULL) = (seating_source IS NULL) AND
    (seating_stress_MPa IS NULL) = (seating_place IS NULL) AND
    (seating_stress_MPa IS NULL) = (seating_keyed IS NULL))
) STRICT, WITHOUT ROWID;

-- Flat sealing rings by nominal size. Form A is solid, form C is a metal jacket with a soft filling whose thickness is
-- that before tightening. The finished hole is a little wider and the finished outside a little smaller than nominal.
CREATE TABLE ring (
  authority TEXT NOT NULL CONSTRAINT fk_ring_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_ring_code CHECK (length(code) > 0),
  standard TEXT NOT NULL CONSTRAINT ck_ring_standard CHECK (length(standard) > 0),
  form TEXT NOT NULL CONSTRAINT ck_ring_form CHECK (form IN ('A', 'C')),
  inner_diameter_print TEXT NOT NULL,
  inner_diameter_mm REAL NOT NULL CONSTRAINT ck_ring_inner CHECK (inner_diameter_mm BETWEEN 2 AND 200),
  outer_diameter_print TEXT NOT NULL,
  outer_diameter_mm REAL NOT NULL CONSTRAINT ck_ring_outer CHECK (outer_diameter_mm > inner_diameter_mm),
  thickness_print TEXT NOT NULL,
  thickness_mm REAL NOT NULL CONSTRAINT ck_ring_thickness CHECK (thickness_mm BETWEEN 0.5 AND 6),
  source TEXT NOT NULL CONSTRAINT fk_ring_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_ring_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_ring_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_ring_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_ring_code UNIQUE (code),
  CONSTRAINT uq_ring_size UNIQUE (standard, form, inner_diameter_mm, outer_diameter_mm)
) STRICT, WITHOUT ROWID;

-- Which ring goes with which thread: a metric size ("M18") or the code of a pipe thread ("G1/2"). One ring of each form
-- is the usual one, taken where a ring is named by its material alone.
CREATE TABLE ring_thread (
  ring TEXT NOT NULL CONSTRAINT fk_ring_thread_ring REFERENCES ring (code) DEFERRABLE INITIALLY DEFERRED,
  size TEXT NOT NULL CONSTRAINT ck_ring_thread_size CHECK (length(size) > 1),
  usual TEXT NOT NULL CONSTRAINT ck_ring_thread_usual CHECK (usual IN ('yes', 'no')),
  source TEXT NOT NULL CONSTRAINT fk_ring_thread_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_ring_thread_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_ring_thread_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_ring_thread_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (ring, size)
) STRICT, WITHOUT ROWID;

-- Heads and nuts. across_flats is the hexagon, or the hexagon socket where kind is `socket`. For nuts the head height is
-- the height of the nut. `also` names a second standard with the same head; grade is the product grade, A/B where one
-- figure was found for both.
CREATE TABLE head (
  authority TEXT NOT NULL CONSTRAINT fk_head_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_head_code CHECK (length(code) > 0),
  standard TEXT NOT NULL CONSTRAINT ck_head_standard CHECK (length(standard) > 0),
  also TEXT CONSTRAINT ck_head_also CHECK (also IS NULL OR length(also) > 0),
  kind TEXT NOT NULL CONSTRAINT ck_head_kind CHECK (kind IN ('hexagon', 'socket', 'flange', 'nut', 'flange nut')),
  size TEXT NOT NULL CONSTRAINT ck_head_size CHECK (length(size) > 1),
  grade TEXT NOT NULL CONSTRAINT ck_head_grade CHECK (grade IN ('A', 'B', 'A/B')),
  across_flats_print TEXT NOT NULL,
  across_flats_mm REAL NOT NULL CONSTRAINT ck_head_across_flats CHECK (across_flats_mm BETWEEN 1 AND 120),
  height_print TEXT,
  height_mm REAL CONSTRAINT ck_head_height CHECK (height_mm BETWEEN 0.5 AND 80),
  height_max_print TEXT,
  height_max_mm REAL CONSTRAINT ck_head_height_max CHECK (height_max_mm BETWEEN 0.5 AND 80),
  bearing_diameter_min_print TEXT,
  bearing_diameter_min_mm REAL CONSTRAINT ck_head_bearing CHECK (bearing_diameter_min_mm BETWEEN 1.5 AND 120),
  head_diameter_max_print TEXT,
  head_diameter_max_mm REAL CONSTRAINT ck_head_diameter CHECK (head_diameter_max_mm BETWEEN 2 AND 120),
  knurled_diameter_max_print TEXT,
  knurled_diameter_max_mm REAL CONSTRAINT ck_head_knurled CHECK (knurled_diameter_max_mm BETWEEN 2 AND 120),
  flange_diameter_max_print TEXT,
  flange_diameter_max_mm REAL CONSTRAINT ck_head_flange CHECK (flange_diameter_max_mm BETWEEN 2 AND 120),
  source TEXT NOT NULL CONSTRAINT fk_head_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_head_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_head_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_head_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_head UNIQUE (standard, size, grade),
  CONSTRAINT ck_head_heights CHECK (coalesce(height_mm, height_max_mm) IS NOT NULL AND
    (height_mm IS NULL OR height_max_mm IS NULL OR height_mm <= height_max_mm)),
  CONSTRAINT ck_head_diameters CHECK (
    (head_diameter_max_mm IS NULL OR bearing_diameter_min_mm IS NULL OR bearing_diameter_min_mm < head_diameter_max_mm) AND
    (knurled_diameter_max_mm IS NULL OR head_diameter_max_mm < knurled_diameter_max_mm) AND
    (flange_diameter_max_mm IS NULL OR bearing_diameter_min_mm IS NULL OR
      bearing_diameter_min_mm < flange_diameter_max_mm))
) STRICT, WITHOUT ROWID;

CREATE TABLE washer (
  authority TEXT NOT NULL CONSTRAINT fk_washer_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_washer_code CHECK (length(code) > 0),
  standard TEXT NOT NULL CONSTRAINT ck_washer_standard CHECK (length(standard) > 0),
  size TEXT NOT NULL CONSTRAINT ck_washer_size CHECK (length(size) > 1),
  hole_diameter_min_print TEXT NOT NULL,
  hole_diameter_min_mm REAL NOT NULL CONSTRAINT ck_washer_hole CHECK (hole_diameter_min_mm BETWEEN 1 AND 200),
  outer_diameter_max_print TEXT NOT NULL,
  outer_diameter_max_mm REAL NOT NULL CONSTRAINT ck_washer_outer CHECK (outer_diameter_max_mm > hole_diameter_min_mm),
  thickness_print TEXT NOT NULL,
  thickness_mm REAL NOT NULL CONSTRAINT ck_washer_thickness CHECK (thickness_mm BETWEEN 0.1 AND 20),
  thickness_max_print TEXT NOT NULL,
  thickness_max_mm REAL NOT NULL CONSTRAINT ck_washer_thickness_max CHECK (thickness_max_mm > thickness_mm),
  source TEXT NOT NULL CONSTRAINT fk_washer_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_washer_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_washer_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_washer_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_washer UNIQUE (standard, size)
) STRICT, WITHOUT ROWID;

CREATE TABLE clearance_hole (
  authority TEXT NOT NULL CONSTRAINT fk_clearance_hole_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_clearance_hole_code CHECK (length(code) > 1),
  size TEXT NOT NULL CONSTRAINT ck_clearance_hole_size CHECK (length(size) > 1),
  fine_print TEXT NOT NULL,
  fine_mm REAL NOT NULL CONSTRAINT ck_clearance_hole_fine CHECK (fine_mm BETWEEN 1 AND 200),
  medium_print TEXT NOT NULL,
  medium_mm REAL NOT NULL CONSTRAINT ck_clearance_hole_medium CHECK (medium_mm > fine_mm),
  coarse_print TEXT NOT NULL,
  coarse_mm REAL NOT NULL CONSTRAINT ck_clearance_hole_coarse CHECK (coarse_mm > medium_mm),
  source TEXT NOT NULL CONSTRAINT fk_clearance_hole_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_clearance_hole_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_clearance_hole_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_clearance_hole_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_clearance_hole_size UNIQUE (size)
) STRICT, WITHOUT ROWID;

-- Torques of stud ends and plugs in ports for fluid power, series S (heavy duty) and L (light duty).
CREATE TABLE port_torque (
  authority TEXT NOT NULL CONSTRAINT fk_port_torque_authority REFERENCES authority (code) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL CONSTRAINT ck_port_torque_code CHECK (length(code) > 0),
  standard TEXT NOT NULL CONSTRAINT ck_port_torque_standard CHECK (length(standard) > 0),
  series TEXT NOT NULL CONSTRAINT ck_port_torque_series CHECK (series IN ('S', 'L')),
  seal TEXT NOT NULL CONSTRAINT ck_port_torque_seal CHECK (seal = 'o-ring'),
  thread TEXT NOT NULL CONSTRAINT fk_port_torque_thread REFERENCES thread (code) DEFERRABLE INITIALLY DEFERRED,
  torque_print TEXT NOT NULL,
  torque_Nm REAL NOT NULL CONSTRAINT ck_port_torque_torque CHECK (torque_Nm BETWEEN 1 AND 1000),
  source TEXT NOT NULL CONSTRAINT fk_port_torque_source REFERENCES source (code) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL CONSTRAINT ck_port_torque_place CHECK (length(place) > 0),
  basis TEXT NOT NULL CONSTRAINT ck_port_torque_basis CHECK (basis IN ('published', 'derived', 'practice')),
  keyed TEXT NOT NULL CONSTRAINT ck_port_torque_keyed CHECK (keyed IN ('document', 'reproduction', 'memory', 'computed')),
  note TEXT,
  PRIMARY KEY (authority, code),
  CONSTRAINT uq_port_torque UNIQUE (standard, thread)
) STRICT, WITHOUT ROWID;

-- Everyday spellings. The alias is matched without regard to letter case; code is the code of the row in table_name, or
-- the class text ("A2-70") where table_name is property_class.
CREATE TABLE alias (
  table_name TEXT NOT NULL CONSTRAINT ck_alias_table
    CHECK (table_name IN ('housing', 'plug_form', 'property_class', 'ring_material')),
  code TEXT NOT NULL CONSTRAINT ck_alias_code CHECK (length(code) > 0),
  alias TEXT NOT NULL COLLATE NOCASE CONSTRAINT ck_alias_alias CHECK (length(alias) > 0 AND alias = trim(alias)),
  PRIMARY KEY (table_name, code, alias),
  CONSTRAINT uq_alias UNIQUE (table_name, alias)
) STRICT, WITHOUT ROWID;

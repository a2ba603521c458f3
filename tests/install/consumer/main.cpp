// SPDX-License-Identifier: MIT
// Prints the torque that brings an M10 screw of class 8.8 to 75 % of its proof load with a nut factor of 0.20.

#include <clampbook/base/decimal.hpp>
#include <clampbook/engine/strength.hpp>
#include <clampbook/engine/thread_geometry.hpp>
#include <clampbook/model/thread.hpp>
#include <clampbook/reference/reference.hpp>
#include <clampbook/units/quantity.hpp>
#include <clampbook/units/reading.hpp>

#include <iostream>

int main() {
    using namespace clampbook;
    const reference::Reference tables;
    const reference::ThreadRow thread = tables.thread(read_thread("M10"));
    const reference::ClassRow strength = tables.property_class(tables.class_name("8.8"), thread);
    const Area area = engine::metric_geometry(thread.major, thread.pitch.value()).stress_area;
    const Force preload = 0.75 * engine::load_at(strength.proof_stress.value(), area);
    const Torque torque = engine::torque_for(preload, 0.20, thread.major);
    std::cout << thread.code << ' ' << strength.name << ": "
              << with_unit(print_fixed(torque.in(newton_metre), 2), unit_named("Nm")) << '\n';
}

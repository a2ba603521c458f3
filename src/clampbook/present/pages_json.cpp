// SPDX-License-Identifier: MIT
// Charts and pages as JSON: what the press sets, and a chart's data for anyone else.

#include "clampbook/present/impl.hpp"

namespace clampbook::present {
namespace {

using present::json_of; // those that the floor shares

Json json_of(const answer::Axis& axis) {
    Json ticks = Json::array();
    for (const double at : axis.ticks) {
        ticks.push_back({{"at", at}, {"words", answer::tick_words(axis, at)}});
    }
    return Json{{"title", axis.title}, {"unit", axis.unit}, {"shown_in", axis.shown_in},
                {"low", axis.low},     {"high", axis.high}, {"ticks", std::move(ticks)}};
}

Json json_of(const answer::ChartBar& bar) {
    Json parts = Json::array();
    for (const answer::BarPart& part : bar.parts) {
        parts.push_back({{"from", part.from}, {"to", part.to}, {"name", part.name}, {"shade", part.shade}});
    }
    return Json{{"name", bar.name}, {"parts", std::move(parts)}, {"words", bar.words}};
}

Json json_of(const answer::PageBlock& block) {
    Json out{{"kind", name_of(block.kind)}};
    const auto add = [&](const char* key, const std::string& text) {
        if (!text.empty()) {
            out[key] = text;
        }
    };
    add("text", block.text);
    add("mark", block.mark);
    add("formula", block.formula);
    add("result", block.result);
    add("source", block.source);
    if (block.kind == answer::BlockKind::room) {
        out["lines"] = block.lines;
    }
    if (block.kind == answer::BlockKind::table) {
        out["columns"] = Json::array();
        for (const answer::PageColumn& column : block.columns) {
            out["columns"].push_back({{"title", column.title}, {"number", column.number}});
        }
        out["rows"] = block.rows;
    }
    if (block.chart) {
        out["chart"] = json_of(*block.chart);
    }
    return out;
}

} // namespace

Json json_of(const answer::Chart& chart) {
    Json out{{"kind", name_of(chart.kind)}, {"title", chart.title}, {"words", chart.words}, {"x", json_of(chart.x)}};
    if (chart.kind != answer::ChartKind::bars) {
        out["y"] = json_of(chart.y);
    }
    out["lines"] = Json::array();
    for (const answer::ChartLine& line : chart.lines) {
        Json points = Json::array();
        for (const auto& [x, y] : line.points) {
            points.push_back({x, y});
        }
        out["lines"].push_back({{"name", line.name}, {"style", name_of(line.style)}, {"points", std::move(points)}});
    }
    if (chart.kind == answer::ChartKind::columns) {
        out["columns"] = {{"low", chart.columns_low}, {"high", chart.columns_high}, {"heights", chart.columns}};
    }
    out["bars"] = Json::array();
    for (const answer::ChartBar& bar : chart.bars) {
        out["bars"].push_back(json_of(bar));
    }
    out["limits"] = Json::array();
    for (const answer::ChartLimit& limit : chart.limits) {
        out["limits"].push_back({{"axis", limit.on_x ? "x" : "y"}, {"at", limit.at}, {"words", limit.words}});
    }
    out["bands"] = Json::array();
    for (const answer::ChartBand& band : chart.bands) {
        out["bands"].push_back({{"axis", band.on_x ? "x" : "y"}, {"low", band.low}, {"high", band.high}, {"words", band.words}});
    }
    out["points"] = Json::array();
    for (const answer::ChartPoint& point : chart.points) {
        out["points"].push_back({{"x", point.x}, {"y", point.y}, {"words", point.words}});
    }
    return out;
}

std::string json(const answer::Pages& pages) {
    Json out = Json::object();
    out["schema"] = schema_name("pages");
    out["title"] = pages.title;
    out["foot"] = pages.foot;
    out["date"] = pages.date;
    out["wall"] = pages.wall;
    out["blocks"] = Json::array();
    for (const answer::PageBlock& block : pages.blocks) {
        out["blocks"].push_back(json_of(block));
    }
    return finished(out);
}

} // namespace clampbook::present

// SPDX-License-Identifier: MIT
#include "canvas.hpp"

#include "clampbook/base/error.hpp"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <pango/pangocairo.h>

#include <array>
#include <cmath>

namespace clampbook::press {
namespace {

constexpr const char* k_family = "DejaVu Sans Condensed, DejaVu Sans, sans-serif";
constexpr const char* k_fixed_pitch_family = "DejaVu Sans Mono, monospace";

void set_stroke(cairo_t* cr, double thickness, Stroke stroke) {
    const std::array<double, 2> dashes{3.0, 2.0};
    const std::array<double, 2> dots{0.1, 2.4};
    cairo_set_line_width(cr, thickness);
    cairo_set_line_cap(cr, stroke == Stroke::dotted ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
    cairo_set_dash(cr, stroke == Stroke::dotted ? dots.data() : dashes.data(), stroke == Stroke::solid ? 0 : 2, 0);
}

struct Forget {
    void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
};

std::unique_ptr<PangoFontDescription, Forget> font_of(const Style& style) {
    std::unique_ptr<PangoFontDescription, Forget> font{pango_font_description_new()};
    pango_font_description_set_family_static(font.get(), style.fixed_pitch ? k_fixed_pitch_family : k_family);
    pango_font_description_set_absolute_size(font.get(), style.size * PANGO_SCALE);
    pango_font_description_set_weight(font.get(), style.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_style(font.get(), style.italic ? PANGO_STYLE_OBLIQUE : PANGO_STYLE_NORMAL);
    return font;
}

struct Unref {
    template <typename T>
    void operator()(T* object) const {
        g_object_unref(object);
    }
};

} // namespace

struct Fonts::Impl {
    std::unique_ptr<PangoContext, Unref> context;
};

struct Text::Impl {
    std::unique_ptr<PangoLayout, Unref> layout;
    double grey = 0;
};

struct Canvas::Impl {
    std::string bytes;
    cairo_surface_t* surface = nullptr;
    cairo_t* cr = nullptr;
    bool is_image = false;
    std::array<int, 4> outline{CAIRO_PDF_OUTLINE_ROOT, CAIRO_PDF_OUTLINE_ROOT, CAIRO_PDF_OUTLINE_ROOT, CAIRO_PDF_OUTLINE_ROOT};

    using Make = cairo_surface_t* (*)(cairo_write_func_t, void*, double, double);
    Impl(Make make, double width, double height) : surface(make(&Impl::keep, this, width, height)), cr(cairo_create(surface)) {}
    explicit Impl(cairo_surface_t* image) : surface(image), cr(cairo_create(image)), is_image(true) {}
    ~Impl() {
        cairo_destroy(cr);
        cairo_surface_destroy(surface);
    }
    Impl(const Impl&) = delete;
    Impl& operator=(const Impl&) = delete;

    // Called by the library, so no exception may leave it.
    static cairo_status_t keep(void* self, const unsigned char* data, unsigned int length) {
        try {
            static_cast<Impl*>(self)->bytes.append(reinterpret_cast<const char*>(data), length);
            return CAIRO_STATUS_SUCCESS;
        } catch (...) {
            return CAIRO_STATUS_NO_MEMORY;
        }
    }
};

Fonts::Fonts() {
    auto impl = std::make_shared<Impl>();
    impl->context.reset(pango_font_map_create_context(pango_cairo_font_map_get_default()));
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(impl->context.get(), options);
    cairo_font_options_destroy(options);
    pango_cairo_context_set_resolution(impl->context.get(), 72);
    pango_context_set_language(impl->context.get(), pango_language_from_string("en"));
    pango_context_set_round_glyph_positions(impl->context.get(), FALSE);
    const std::unique_ptr<PangoFont, Unref> any{pango_context_load_font(impl->context.get(), font_of({}).get())};
    if (!any) {
        throw error(ErrorKind::invalid_data, "there is no font here, and a page without letters is no page; install the packages "
                                             "fonts-dejavu-core and fonts-dejavu-extra");
    }
    impl_ = std::move(impl);
}

FontPairs fonts_here() {
    const std::unique_ptr<PangoContext, Unref> context{pango_font_map_create_context(pango_cairo_font_map_get_default())};
    const auto found = [&](const Style& style) -> std::string {
        const std::unique_ptr<PangoFont, Unref> font{pango_context_load_font(context.get(), font_of(style).get())};
        if (!font) {
            return {};
        }
        PangoFontFace* face = pango_font_get_face(font.get());
        return std::string{pango_font_family_get_name(pango_font_face_get_family(face))} + " " +
               pango_font_face_get_face_name(face);
    };
    return {{"DejaVu Sans Condensed", found({})},
            {"DejaVu Sans Condensed Bold", found({.bold = true})},
            {"DejaVu Sans Condensed Oblique", found({.italic = true})},
            {"DejaVu Sans Mono Book", found({.fixed_pitch = true})}};
}

Text::Text(const Fonts& fonts, const std::string& words, const Style& style, double width) {
    auto impl = std::make_shared<Impl>();
    impl->layout.reset(pango_layout_new(fonts.impl_->context.get()));
    impl->grey = style.grey;
    PangoLayout* layout = impl->layout.get();
    pango_layout_set_font_description(layout, font_of(style).get());
    pango_layout_set_width(layout, static_cast<int>(width * PANGO_SCALE));
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    pango_layout_set_text(layout, words.data(), static_cast<int>(words.size()));
    if (style.struck) {
        PangoAttrList* marks = pango_attr_list_new();
        pango_attr_list_insert(marks, pango_attr_strikethrough_new(TRUE));
        pango_layout_set_attributes(layout, marks);
        pango_attr_list_unref(marks);
    }
    PangoRectangle logical{};
    pango_layout_get_extents(layout, nullptr, &logical);
    height_ = static_cast<double>(logical.height) / PANGO_SCALE;
    used_width_ = static_cast<double>(logical.width) / PANGO_SCALE;
    impl_ = std::move(impl);
}

Canvas Canvas::pdf(double width, double height, const About& about) {
    auto impl = std::make_shared<Impl>(&cairo_pdf_surface_create_for_stream, width, height);
    const std::string day = about.date + "T00:00:00Z";
    for (const auto& [key, words] : {std::pair{CAIRO_PDF_METADATA_TITLE, about.title},
                                     {CAIRO_PDF_METADATA_AUTHOR, about.author},
                                     {CAIRO_PDF_METADATA_CREATOR, std::string{"clampbook"}},
                                     {CAIRO_PDF_METADATA_CREATE_DATE, day},
                                     {CAIRO_PDF_METADATA_MOD_DATE, day}}) {
        cairo_pdf_surface_set_metadata(impl->surface, key, words.c_str());
    }
    return Canvas{std::move(impl)};
}

Canvas Canvas::svg(double width, double height) {
    Canvas out{std::make_shared<Impl>(&cairo_svg_surface_create_for_stream, width, height)};
    out.box(0, 0, width, height, 1, 0);
    return out;
}

Canvas Canvas::png(double width, double height, double scale) {
    auto impl = std::make_shared<Impl>(cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(std::ceil(width * scale)),
                                                                  static_cast<int>(std::ceil(height * scale))));
    cairo_scale(impl->cr, scale, scale);
    Canvas out{std::move(impl)};
    out.box(0, 0, width + 1, height + 1, 1, 0); // to the last pixel
    return out;
}

void Canvas::text(const Text& text, double x, double y) {
    const double grey = text.impl_->grey;
    cairo_set_source_rgb(impl_->cr, grey, grey, grey);
    cairo_move_to(impl_->cr, x, y);
    pango_cairo_show_layout(impl_->cr, text.impl_->layout.get());
}

void Canvas::line(double x1, double y1, double x2, double y2, double thickness, Stroke stroke) {
    cairo_t* cr = impl_->cr;
    cairo_set_source_rgb(cr, 0, 0, 0);
    set_stroke(cr, thickness, stroke);
    cairo_move_to(cr, x1, y1);
    cairo_line_to(cr, x2, y2);
    cairo_stroke(cr);
}

void Canvas::polyline(const std::vector<Point>& points, double thickness, Stroke stroke, double grey) {
    cairo_t* cr = impl_->cr;
    cairo_set_source_rgb(cr, grey, grey, grey);
    set_stroke(cr, thickness, stroke);
    cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
    cairo_new_path(cr); // text leaves its place behind
    for (const Point& point : points) {
        cairo_line_to(cr, point.x, point.y);
    }
    cairo_stroke(cr);
}

void Canvas::box(double x, double y, double width, double height, double grey, double outline) {
    cairo_t* cr = impl_->cr;
    cairo_set_source_rgb(cr, grey, grey, grey);
    cairo_rectangle(cr, x, y, width, height);
    cairo_fill_preserve(cr);
    if (outline > 0) {
        cairo_set_source_rgb(cr, 0, 0, 0);
        set_stroke(cr, outline, Stroke::solid);
        cairo_stroke(cr);
    }
    cairo_new_path(cr);
}

void Canvas::dot(double x, double y, double radius) {
    constexpr double k_whole_turn = 6.283185307179586;
    cairo_set_source_rgb(impl_->cr, 0, 0, 0);
    cairo_new_path(impl_->cr);
    cairo_arc(impl_->cr, x, y, radius, 0, k_whole_turn);
    cairo_fill(impl_->cr);
}

void Canvas::next_page() { cairo_show_page(impl_->cr); }

void Canvas::outline(const std::string& words, int level, std::size_t page, double x, double y) {
    const std::string where = fmt::format("page={} pos=[{:.1f} {:.1f}]", page, x, y);
    const auto at = static_cast<std::size_t>(level);
    impl_->outline.at(at + 1) = cairo_pdf_surface_add_outline(impl_->surface, impl_->outline.at(at), words.c_str(), where.c_str(),
                                                              CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

std::string Canvas::finish() {
    if (impl_->is_image) {
        cairo_surface_flush(impl_->surface);
        const cairo_status_t status = cairo_surface_write_to_png_stream(impl_->surface, &Impl::keep, impl_.get());
        if (status != CAIRO_STATUS_SUCCESS) {
            throw error(ErrorKind::internal, "the picture cannot be written: {}", cairo_status_to_string(status));
        }
    }
    cairo_surface_finish(impl_->surface);
    for (const cairo_status_t status : {cairo_status(impl_->cr), cairo_surface_status(impl_->surface)}) {
        if (status != CAIRO_STATUS_SUCCESS) {
            throw error(ErrorKind::internal, "the page cannot be drawn: {}", cairo_status_to_string(status));
        }
    }
    return std::move(impl_->bytes);
}

} // namespace clampbook::press

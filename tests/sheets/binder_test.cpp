// Every demo on every paper, both sides bound: the pages are sound, and say what the plan says.
#include <catch2/catch.hpp>
#include <filesystem>
#include <map>

#include "drafting/sheet_frame.h"
#include "ink/lint.h"
#include "ink/outline.h"
#include "sheets/packet.h"
#include "sheets/part_pages.h"
#include "support/demos.h"
#include "support/piece.h"
#include "writers/files.h"

using namespace splay;

namespace {

namespace fs = std::filesystem;

using test::demos;
using test::fonts;

test::Built built(const fs::path& file) { return test::build(writers::read_file(file, 1u << 24)); }

std::vector<std::string> words(const ink::Page& page) {
  std::vector<std::string> found;
  ink::walk(page.items, [&](const ink::Item& item) {
    if (const auto* text = std::get_if<ink::Text>(&item)) found.push_back(text->utf8);
  });
  return found;
}

int count(const ink::Packet& packet, const std::string& word) {
  std::ptrdiff_t total = 0;
  for (const ink::Page& page : packet.pages) total += std::ranges::count(words(page), word);
  return static_cast<int>(total);
}

// The part of the free height between the lowest and the highest ink of what a sheet shows: frame,
// title block and bars left out.
double filled(const ink::Page& page) {
  const ink::Rect area = drafting::free_area(drafting::paper_named(page.paper.name));
  double low = 1e300, high = -1e300;
  const auto include = [&](Vec2 p) {
    if (p.x > page.paper.width - page.paper.margin_right - 12 || p.y < area.low.y - 1) return;
    low = std::min(low, p.y);
    high = std::max(high, p.y);
  };
  int skipped = 0;
  const auto skips = [](const ink::Group& group) {
    return group.role == "frame" || group.role == "title block";
  };
  ink::walk(
      page.items,
      [&](const ink::Item& item) {
        if (skipped > 0) return;
        if (const auto* text = std::get_if<ink::Text>(&item)) include(text->at);
        if (const auto* stroke = std::get_if<ink::Stroke>(&item))
          for (const Vec2 p : stroke->path.points) include(p);
      },
      [&](const ink::Group& group) { skipped += skips(group) ? 1 : 0; },
      [&](const ink::Group& group) { skipped -= skips(group) ? 1 : 0; });
  return (high - low) / area.height();
}

// Every page of every demo on every paper.
template <class Visit>
void on_every_page(Visit visit) {
  for (const fs::path& file : demos()) {
    test::Built piece = built(file);
    for (const auto paper : {model::PaperSize::a4, model::PaperSize::letter, model::PaperSize::a3,
                             model::PaperSize::tabloid}) {
      piece.project->job.paper.value = paper;
      const ink::Packet packet = sheets::make_packet(piece.plan, model::Style{}, fonts());
      for (const ink::Page& page : packet.pages) {
        INFO(fs::path(file).filename()
             << ", " << page.paper.name << ", page " << page.label << ", " << page.title);
        visit(page);
      }
    }
  }
}

}  // namespace

TEST_CASE("no demo has a page fault on any paper, bound on one side or two") {
  for (const fs::path& file : demos()) {
    test::Built piece = built(file);
    for (const auto paper : {model::PaperSize::a4, model::PaperSize::letter, model::PaperSize::a3,
                             model::PaperSize::tabloid}) {
      for (const bool two_sided : {false, true}) {
        piece.project->job.paper.value = paper;
        piece.project->job.two_sided.value = two_sided;
        const ink::Packet packet = sheets::make_packet(piece.plan, model::Style{}, fonts());
        INFO(fs::path(file).filename()
             << ", " << packet.pages.front().paper.name << (two_sided ? ", two-sided" : ""));
        CHECK_THAT(test::page_faults(piece, packet), Catch::Equals(""));
      }
    }
  }
}

TEST_CASE("every page has its number, its revision and its date, and the index leads to all") {
  for (const fs::path& file : demos()) {
    const test::Built piece = built(file);
    const ink::Packet packet = sheets::make_packet(piece.plan, model::Style{}, fonts());
    const std::string total = std::to_string(packet.pages.size());
    std::map<std::string, std::string> first_page;
    for (std::size_t i = 0; i < packet.pages.size(); ++i) {
      const ink::Page& page = packet.pages[i];
      CHECK(page.label == std::to_string(i + 1));
      first_page.emplace(page.title.substr(0, page.title.find(':')), "page " + page.label);
      const std::vector<std::string> all = words(page);
      CHECK(std::ranges::count(all, page.label + " of " + total) == 1);
      CHECK(std::ranges::count(all, *piece.project->job.revision) >= 1);
      CHECK(std::ranges::count(all, "100 mm") == 2);
    }
    std::vector<std::string> targets;
    ink::walk(packet.pages.front().items, [&](const ink::Item& item) {
      if (const auto* link = std::get_if<ink::Link>(&item)) targets.push_back(link->target);
    });
    for (const auto& [title, target] : first_page) {
      INFO(title);
      CHECK(std::ranges::count(targets, target) >= 1);
    }
  }
}

TEST_CASE("every named angle is on a page, with its rise, one sentence where all are square") {
  for (const fs::path& file : demos()) {
    const test::Built piece = built(file);
    const ink::Packet packet = sheets::make_packet(piece.plan, model::Style{}, fonts());
    REQUIRE_FALSE(piece.plan.assembly.angles.empty());
    const bool square =
        std::ranges::all_of(piece.plan.assembly.angles, [](const parts::NamedAngle& angle) {
          return std::abs(Angle{angle.radians}.degrees() - 90) < 1e-6;
        });
    CHECK(count(packet, "Every angle between sides is square, 90°.") == (square ? 1 : 0));
    if (square) continue;
    for (const parts::NamedAngle& angle : piece.plan.assembly.angles) {
      INFO(angle.name);
      const double degrees = Angle{angle.radians}.degrees();
      CHECK(count(packet, degrees_text(degrees)) > 0);
      const FigureStyle figures = piece.project->job.figures();
      const std::string rise = degrees > 90 ? rise_text(degrees - 90, figures) + " past square"
                                            : rise_text(degrees, figures);
      CHECK(count(packet, rise) > 0);
    }
  }
}

TEST_CASE("the diagonals of every four-cornered loop are printed as planned") {
  for (const fs::path& file : demos()) {
    const test::Built piece = built(file);
    const ink::Packet packet = sheets::make_packet(piece.plan, model::Style{}, fonts());
    const FigureStyle figures = piece.project->job.figures();
    for (const fabrication::LoopReport& loop : piece.plan.loops) {
      INFO(loop.name);
      CHECK(count(packet, loop.name) >= 1);
      CHECK(count(packet, figures.text(loop.check)) >= 1);
      if (loop.diagonal_1 <= 0) continue;
      CHECK(count(packet, figures.text(loop.diagonal_1)) >= 1);
      CHECK(count(packet, figures.text(loop.diagonal_2)) >= 1);
    }
  }
}

TEST_CASE("two-sided binders leave the filing margin on the inner edge") {
  test::Built piece = built(demos().front());
  piece.project->job.two_sided.value = true;
  const ink::Packet packet = sheets::make_packet(piece.plan, model::Style{}, fonts());
  for (std::size_t i = 0; i < packet.pages.size(); ++i) {
    const ink::Paper& paper = packet.pages[i].paper;
    CHECK(paper.margin_left == (i % 2 == 0 ? 20 : 10));
    CHECK(paper.margin_right == (i % 2 == 0 ? 10 : 20));
  }
}

TEST_CASE("no page of a demo is mostly empty") {
  on_every_page([](const ink::Page& page) {
    // What is drawn full size is as large as it is.
    const bool full_size = page.title == "Templates" || page.title == "Setting-out strips";
    CHECK(filled(page) > (full_size ? 0.25 : 0.3));
  });
}

TEST_CASE("nothing in a demo's binder is cut short") {
  on_every_page([](const ink::Page& page) {
    ink::walk(page.items, [](const ink::Item& item) {
      const auto* text = std::get_if<ink::Text>(&item);
      if (text == nullptr) return;
      INFO(text->utf8);
      CHECK(text->utf8.find("\u2026") == std::string::npos);
      CHECK(text->utf8.find("...") == std::string::npos);
    });
  });
}

TEST_CASE("a stopped plan has no binder") {
  test::Built piece = built(demos().front());
  piece.plan.findings.push_back({Level::stop, "test", {}, "text", "remedy", {}});
  CHECK_THROWS_AS(sheets::make_packet(piece.plan, model::Style{}, fonts()), std::invalid_argument);
}

// A maker at the bench has the pages, not the file: no name of a table stands on them.
TEST_CASE("no page of any demo has a table of the project file on it") {
  for (const fs::path& file : demos()) {
    const test::Built piece = built(file);
    const ink::Packet packet = sheets::make_packet(piece.plan, model::Style{}, fonts());
    for (const ink::Page& page : packet.pages)
      for (const std::string& text : words(page)) {
        INFO(file << ", page " << page.label << ": " << text);
        const std::size_t at = text.find('[');
        CHECK((at == std::string::npos || at + 1 == text.size() || text[at + 1] < 'a' ||
               text[at + 1] > 'z'));
      }
  }
}

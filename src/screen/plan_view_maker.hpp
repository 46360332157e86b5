// What makes the model of the Plan view, parted among its .cpp files: what was measured, how deep and which sizes in
// plan_view_figures.cpp, the frame, the cautions and the hold in plan_view_model.cpp. Nobody else includes it.
#pragma once

#include "screen/pages.hpp"
#include "screen/plan_view.hpp"
#include "screen/plan_view_panels.hpp"

namespace screen {

class PlanMaker {
public:
    PlanMaker(const PlanSeen& seen, const PlanPage& page, const Words& words) : seen_(seen), page_(page), words_(words) {}

    PlanModel made() {
        frame();
        measured();
        ladder();
        sizes();
        cautions();
        foot();
        made_.panel = plan_panel(seen_, page_, words_);
        if (made_.panel) made_.column = made_.panel->column;
        weigh();
        return std::move(made_);
    }

private:
    const plan::CaseFile& file() const { return seen_.inputs.file; }
    const plan::Plan& plan() const { return seen_.plan; }
    bool doubting() const { return page_.doubted.has_value(); }

    void frame();
    std::optional<Banner> banner() const;
    void measured();
    std::string by() const;
    Target reading(std::size_t index, bool one_ring) const;
    void ladder();
    PlanModel::Rung rung(const plan::Rung& of) const;
    PlanModel::Rung bare(int spokes) const;
    Show proposing(int spokes) const;
    int middle() const;
    void sizes();
    struct Stock {
        const std::vector<measure::Length>& profile;
        const std::vector<measure::Length>& shelf;  // empty: the unit does not say
    };
    picture::SizeRuler ruler(const char* label, measure::Length chosen, const Stock& stock) const;
    void steps(const char* which, measure::Length chosen, const std::vector<measure::Length>& held);
    void cautions();
    void foot();
    Target hold() const;
    std::string why_not() const;
    void weigh();

    const PlanSeen& seen_;
    const PlanPage& page_;
    const Words& words_;
    PlanModel made_{};
};

/// Opens the panel that says where a figure comes from.
Target asks(const std::string& figure, std::string label, std::string line);

}  // namespace screen

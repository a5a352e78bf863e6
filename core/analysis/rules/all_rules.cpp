// The table of all rules. A rule that is not here does not run.
#include "core/analysis/rule.h"

#include <algorithm>
#include <array>

namespace streamwright::analysis {

namespace rules::address_outside_subnet {
extern const Rule rule;
}
namespace rules::address_table_full {
extern const Rule rule;
}
namespace rules::address_twice {
extern const Rule rule;
}
namespace rules::aggregate_member_overfull {
extern const Rule rule;
}
namespace rules::agreed_sources_exceeded {
extern const Rule rule;
}
namespace rules::agreed_sources_overfull {
extern const Rule rule;
}
namespace rules::both_roles_at_once {
extern const Rule rule;
}
namespace rules::burst_into_slower_port {
extern const Rule rule;
}
namespace rules::cable_end_open {
extern const Rule rule;
}
namespace rules::cable_end_unknown {
extern const Rule rule;
}
namespace rules::cable_over_own_limit {
extern const Rule rule;
}
namespace rules::chassis_slot_clash {
extern const Rule rule;
}
namespace rules::coding_not_decoded {
extern const Rule rule;
}
namespace rules::coding_not_made {
extern const Rule rule;
}
namespace rules::connectors_do_not_mate {
extern const Rule rule;
}
namespace rules::control_port_missing {
extern const Rule rule;
}
namespace rules::copper_cords_too_long {
extern const Rule rule;
}
namespace rules::copper_too_long {
extern const Rule rule;
}
namespace rules::daisy_chain_overfull {
extern const Rule rule;
}
namespace rules::decoder_without_display {
extern const Rule rule;
}
namespace rules::duplicate_tag {
extern const Rule rule;
}
namespace rules::edge_port_to_bridge {
extern const Rule rule;
}
namespace rules::edid_copied_from_nothing {
extern const Rule rule;
}
namespace rules::encoder_without_source {
extern const Rule rule;
}
namespace rules::extender_halves_differ {
extern const Rule rule;
}
namespace rules::failure_overfull {
extern const Rule rule;
}
namespace rules::fibre_does_not_fit {
extern const Rule rule;
}
namespace rules::fibre_kinds_mixed {
extern const Rule rule;
}
namespace rules::fibre_loss_too_high {
extern const Rule rule;
}
namespace rules::fibre_polarity {
extern const Rule rule;
}
namespace rules::fibre_polish_clash {
extern const Rule rule;
}
namespace rules::fibre_strands_too_few {
extern const Rule rule;
}
namespace rules::fibre_too_long {
extern const Rule rule;
}
namespace rules::format_does_not_fit {
extern const Rule rule;
}
namespace rules::frames_too_large {
extern const Rule rule;
}
namespace rules::group_reserved {
extern const Rule rule;
}
namespace rules::group_used_twice {
extern const Rule rule;
}
namespace rules::groups_share_mac {
extern const Rule rule;
}
namespace rules::guards_clash {
extern const Rule rule;
}
namespace rules::hdcp_chain_breaks {
extern const Rule rule;
}
namespace rules::hdcp_too_many_devices {
extern const Rule rule;
}
namespace rules::hdr_not_passed {
extern const Rule rule;
}
namespace rules::igmp_timers_clash {
extern const Rule rule;
}
namespace rules::image_too_small {
extern const Rule rule;
}
namespace rules::kvm_sides {
extern const Rule rule;
}
namespace rules::led_output_on_network {
extern const Rule rule;
}
namespace rules::led_port_overfull {
extern const Rule rule;
}
namespace rules::length_unknown {
extern const Rule rule;
}
namespace rules::line_loses_too_much {
extern const Rule rule;
}
namespace rules::line_too_long {
extern const Rule rule;
}
namespace rules::link_overfull {
extern const Rule rule;
}
namespace rules::link_overfull_worst_case {
extern const Rule rule;
}
namespace rules::link_slower_than_endpoint {
extern const Rule rule;
}
namespace rules::link_slower_than_stream {
extern const Rule rule;
}
namespace rules::loop_unprotected {
extern const Rule rule;
}
namespace rules::management_server_missing {
extern const Rule rule;
}
namespace rules::mixed_cost_scales {
extern const Rule rule;
}
namespace rules::no_common_speed {
extern const Rule rule;
}
namespace rules::no_querier {
extern const Rule rule;
}
namespace rules::outputs_joined {
extern const Rule rule;
}
namespace rules::picture_facts_unknown {
extern const Rule rule;
}
namespace rules::plan_access_control {
extern const Rule rule;
}
namespace rules::plan_accounts {
extern const Rule rule;
}
namespace rules::plan_encryption {
extern const Rule rule;
}
namespace rules::planes_share {
extern const Rule rule;
}
namespace rules::poe_budget_exceeded {
extern const Rule rule;
}
namespace rules::poe_class_too_low {
extern const Rule rule;
}
namespace rules::poe_too_little_arrives {
extern const Rule rule;
}
namespace rules::port_used_twice {
extern const Rule rule;
}
namespace rules::querier_place {
extern const Rule rule;
}
namespace rules::querier_without_address {
extern const Rule rule;
}
namespace rules::rack_unit_clash {
extern const Rule rule;
}
namespace rules::reports_unheard {
extern const Rule rule;
}
namespace rules::root_left_to_chance {
extern const Rule rule;
}
namespace rules::shared_stream_held_back {
extern const Rule rule;
}
namespace rules::single_point_of_failure {
extern const Rule rule;
}
namespace rules::snooping_table_full {
extern const Rule rule;
}
namespace rules::sound_flow_not_taken {
extern const Rule rule;
}
namespace rules::sound_levels_differ {
extern const Rule rule;
}
namespace rules::sound_loop {
extern const Rule rule;
}
namespace rules::sound_not_fed {
extern const Rule rule;
}
namespace rules::sound_out_of_step {
extern const Rule rule;
}
namespace rules::stream_cannot_reach {
extern const Rule rule;
}
namespace rules::subnet_too_small {
extern const Rule rule;
}
namespace rules::subscription_not_decoded {
extern const Rule rule;
}
namespace rules::subscription_not_encoded {
extern const Rule rule;
}
namespace rules::surround_without_downmix {
extern const Rule rule;
}
namespace rules::switch_facts_unknown {
extern const Rule rule;
}
namespace rules::switching_overlap {
extern const Rule rule;
}
namespace rules::too_many_groups {
extern const Rule rule;
}
namespace rules::too_many_sound_flows {
extern const Rule rule;
}
namespace rules::too_many_windows {
extern const Rule rule;
}
namespace rules::tree_on_slow_link {
extern const Rule rule;
}
namespace rules::untagged_vlan_mismatch {
extern const Rule rule;
}
namespace rules::usb_both_roles_cabled {
extern const Rule rule;
}
namespace rules::usb_charging_too_little {
extern const Rule rule;
}
namespace rules::usb_device_not_carried {
extern const Rule rule;
}
namespace rules::usb_too_many_devices {
extern const Rule rule;
}
namespace rules::usb_too_many_hubs {
extern const Rule rule;
}
namespace rules::vlan_leaks {
extern const Rule rule;
}
namespace rules::vlan_missing_on_trunk {
extern const Rule rule;
}
namespace rules::wall_out_of_step {
extern const Rule rule;
}
namespace rules::wall_tile_missing {
extern const Rule rule;
}
namespace rules::wall_tiles_differ {
extern const Rule rule;
}

std::span<const Rule> all_rules() {
    static const std::array table{rules::address_outside_subnet::rule,
                                  rules::address_table_full::rule,
                                  rules::address_twice::rule,
                                  rules::aggregate_member_overfull::rule,
                                  rules::agreed_sources_exceeded::rule,
                                  rules::agreed_sources_overfull::rule,
                                  rules::both_roles_at_once::rule,
                                  rules::burst_into_slower_port::rule,
                                  rules::cable_end_open::rule,
                                  rules::cable_end_unknown::rule,
                                  rules::cable_over_own_limit::rule,
                                  rules::chassis_slot_clash::rule,
                                  rules::coding_not_decoded::rule,
                                  rules::coding_not_made::rule,
                                  rules::connectors_do_not_mate::rule,
                                  rules::control_port_missing::rule,
                                  rules::copper_cords_too_long::rule,
                                  rules::copper_too_long::rule,
                                  rules::daisy_chain_overfull::rule,
                                  rules::decoder_without_display::rule,
                                  rules::duplicate_tag::rule,
                                  rules::edge_port_to_bridge::rule,
                                  rules::edid_copied_from_nothing::rule,
                                  rules::encoder_without_source::rule,
                                  rules::extender_halves_differ::rule,
                                  rules::failure_overfull::rule,
                                  rules::fibre_does_not_fit::rule,
                                  rules::fibre_kinds_mixed::rule,
                                  rules::fibre_loss_too_high::rule,
                                  rules::fibre_polarity::rule,
                                  rules::fibre_polish_clash::rule,
                                  rules::fibre_strands_too_few::rule,
                                  rules::fibre_too_long::rule,
                                  rules::format_does_not_fit::rule,
                                  rules::frames_too_large::rule,
                                  rules::group_reserved::rule,
                                  rules::group_used_twice::rule,
                                  rules::groups_share_mac::rule,
                                  rules::guards_clash::rule,
                                  rules::hdcp_chain_breaks::rule,
                                  rules::hdcp_too_many_devices::rule,
                                  rules::hdr_not_passed::rule,
                                  rules::igmp_timers_clash::rule,
                                  rules::image_too_small::rule,
                                  rules::kvm_sides::rule,
                                  rules::led_output_on_network::rule,
                                  rules::led_port_overfull::rule,
                                  rules::length_unknown::rule,
                                  rules::line_loses_too_much::rule,
                                  rules::line_too_long::rule,
                                  rules::link_overfull::rule,
                                  rules::link_overfull_worst_case::rule,
                                  rules::link_slower_than_endpoint::rule,
                                  rules::link_slower_than_stream::rule,
                                  rules::loop_unprotected::rule,
                                  rules::management_server_missing::rule,
                                  rules::mixed_cost_scales::rule,
                                  rules::no_common_speed::rule,
                                  rules::no_querier::rule,
                                  rules::outputs_joined::rule,
                                  rules::picture_facts_unknown::rule,
                                  rules::plan_access_control::rule,
                                  rules::plan_accounts::rule,
                                  rules::plan_encryption::rule,
                                  rules::planes_share::rule,
                                  rules::poe_budget_exceeded::rule,
                                  rules::poe_class_too_low::rule,
                                  rules::poe_too_little_arrives::rule,
                                  rules::port_used_twice::rule,
                                  rules::querier_place::rule,
                                  rules::querier_without_address::rule,
                                  rules::rack_unit_clash::rule,
                                  rules::reports_unheard::rule,
                                  rules::root_left_to_chance::rule,
                                  rules::shared_stream_held_back::rule,
                                  rules::single_point_of_failure::rule,
                                  rules::snooping_table_full::rule,
                                  rules::sound_flow_not_taken::rule,
                                  rules::sound_levels_differ::rule,
                                  rules::sound_loop::rule,
                                  rules::sound_not_fed::rule,
                                  rules::sound_out_of_step::rule,
                                  rules::stream_cannot_reach::rule,
                                  rules::subnet_too_small::rule,
                                  rules::subscription_not_decoded::rule,
                                  rules::subscription_not_encoded::rule,
                                  rules::surround_without_downmix::rule,
                                  rules::switch_facts_unknown::rule,
                                  rules::switching_overlap::rule,
                                  rules::too_many_groups::rule,
                                  rules::too_many_sound_flows::rule,
                                  rules::too_many_windows::rule,
                                  rules::tree_on_slow_link::rule,
                                  rules::untagged_vlan_mismatch::rule,
                                  rules::usb_both_roles_cabled::rule,
                                  rules::usb_charging_too_little::rule,
                                  rules::usb_device_not_carried::rule,
                                  rules::usb_too_many_devices::rule,
                                  rules::usb_too_many_hubs::rule,
                                  rules::vlan_leaks::rule,
                                  rules::vlan_missing_on_trunk::rule,
                                  rules::wall_out_of_step::rule,
                                  rules::wall_tile_missing::rule,
                                  rules::wall_tiles_differ::rule};
    return table;
}

const Rule* find_rule(std::string_view id) {
    const auto rules = all_rules();
    const auto at = std::lower_bound(rules.begin(), rules.end(), id,
                                     [](const Rule& rule, std::string_view key) { return rule.words.id < key; });
    return at != rules.end() && at->words.id == id ? &*at : nullptr;
}

}  // namespace streamwright::analysis

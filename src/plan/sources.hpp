// Where the figures and cautions of a plan come from, as public sources that a reader can look up.
#pragma once

namespace plan::source {

inline constexpr auto usual = "common practice, no published figure";
inline constexpr auto own_file = "the case file";
inline constexpr auto profiles = "the instrument profiles";
inline constexpr auto unit = "the unit's own limit";
inline constexpr auto shelf = "the unit's own list of its stock";

// 83.7 +- 6.53 % of thickness reached where 80 % was aimed at, 71.3 to 95.35 %
inline constexpr auto depth = "Clin Ophthalmol 2014;8:2391-6, 11 cadaver eyes";
// The same, as the profile that is shipped says it of its own reach.
inline constexpr auto reach = "Clin Ophthalmol 2014;8:2391-6: 11 cadaver eyes, 83.7 ± 6.53 % reached where 80 % was aimed at";
// 66.2 +- 4.79 % along the slant of the cut, same specimens as `depth`
inline constexpr auto slant = "Clin Ophthalmol 2014;8:2391-6, same specimens, measured along the slant of the cut";
// Path straight down over thickness, worked from four model corneas: 1.17 to 1.20 at 7.5, 1.19 to 1.23 at 8.0, 1.22 to 1.27 at 8.5 mm
inline constexpr auto slanted_path =
    "worked from radii of Acta Ophthalmol Scand 2002;80:379-83, doi 10.1034/j.1600-0420.2002.800406.x, and model eyes";
// Day-to-day limits and a bias of about 54 um; OCT -6.4 um (95 % -23.2 to +10.4); Scheimpflug -6.5 +- 1.8; pooled -11.26
inline constexpr auto slit_bias = "Cornea 2000;19:792-5, PMID 11095052";
inline constexpr auto oct_bias = "Ophthalmology 2006, PMC1474520, 42 eyes";
inline constexpr auto scheimpflug_bias =
    "J Cataract Refract Surg 2009, Prospero Ponce and others, 163 eyes; PMC7891160, 12 studies, 862 eyes";
inline constexpr auto profile =
    "80 normal eyes, optical pachometry, Acta Ophthalmol, year not known; Insight 1993;18(4):16-22, PMID 8301187";
inline constexpr auto keratoconus = "Cornea 2013;32:257-61, PMID 22562062";
inline constexpr auto oedema = "IOVS 2011;52:206-14, doi 10.1167/iovs.09-4101";
inline constexpr auto repeatability = "Cornea 2000;19:792-5, PMID 11095052; Cornea 2013;32(12), doi 10.1097/ICO.0b013e3182a7f39d";
// studentised deleted residual, limit by Bonferroni
inline constexpr auto odd = "outlier test of the fit itself, by what the other readings say";
inline constexpr auto decentration = "Ophthalmic Surg Lasers 1998;29:106-13, PMID 9507253";
inline constexpr auto button = "Arch Ophthalmol 1988;106:1228-33, doi 10.1001/archopht.1988.01060140388039";
inline constexpr auto quarter_for = "Ophthalmology 1989;96:299-305, PMID 2652028";
// +0.25 against 0, mixed reasons: -1.35 +- 2.25 and -0.14 +- 2.42 D at 12 months, P 0.052
inline constexpr auto quarter_mixed = "PLoS One 2019, June, Koo and others: 12 interrupted and a running suture of 12 bites";
// 70, 18 and 68 grafts in 7.5 mm hosts
inline constexpr auto suction_sizes = "PMID 9143803, 156 grafts cut by suction trephine";
inline constexpr auto registry = "Ophthalmology 2008;115:268-75, PMID 18164404";
inline constexpr auto long_eye = "Cornea 2004;23:345-9, PMID 15097127";
inline constexpr auto half_for = "Arch Ophthalmol 1978;96:2231-3, PMID 363108";
inline constexpr auto half_against = "Ophthalmology 1982;89:242-6, PMID 7045764";
inline constexpr auto oversize_round = "Am J Ophthalmol 1988;105:637-45, PMID 3287939";
inline constexpr auto undersize = "J Cataract Refract Surg 1988;14:541-7, PMID 3054053";
inline constexpr auto small_host = "Sci Rep 2020;10:18594, PMID 33122764";
inline constexpr auto density = "Transplantation 2004;78:1299-302, PMID 15548966";
inline constexpr auto storage = "Int Ophthalmol 2008;28:155-63, PMID 17505780";
// 3-year success 95.3 % (93.6 to 96.9) to 7 days, 92.1 % (89.9 to 94.2) from 8 to 14, 1330 eyes, endothelial grafts
inline constexpr auto cold_days = "JAMA Ophthalmol 2017;135:1401-9, PMID 29127431: 1330 endothelial grafts, not full-thickness ones";
inline constexpr auto opposite = "Ophthalmologe 2005;102:1128-36, PMID 16328481";

}  // namespace plan::source

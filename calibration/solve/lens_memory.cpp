#include "calibration/solve/lens_memory.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

using nlohmann::json;

constexpr double kContradicts = 4.0;  // standard deviations between memory and photographs
constexpr double kMostPull =
    12.0;  // by which memory may raise the fit's cost: chi-square of 8 numbers, 0.998
constexpr double kMuchBetter = 2.0;  // an older lens known so much better stays
constexpr double kWellFocal = 0.006, kWellCentre = 0.004, kWellBend = 0.03;

// What may change from one day to the next: focal length by focusing, the centre by a shaken or steadied
// lens, the bend with the focus.
std::array<double, 8> looseness(double longest) {
  return {0.006, 0.0015 * longest, 0.0015 * longest, 0.01, 0.03, 0.03, 0.0003, 0.0003};
}

const KnownLens* remembered(const std::vector<KnownLens>& memory, const std::string& camera, int width,
                            int height) {
  for (const KnownLens& lens : memory)
    if (lens.camera == camera && lens.width == width && lens.height == height) return &lens;
  return nullptr;
}

std::array<double, 8> sigmas_of(Scene& scene, const FitNoise& noise, size_t lens) {
  const Eigen::MatrixXd covariance = lens_covariance(scene, noise, static_cast<int>(lens));
  std::array<double, 8> out{};
  for (Eigen::Index k = 0; k < 8; ++k)
    out[static_cast<size_t>(k)] = std::sqrt(std::max(0.0, covariance(k, k)));
  out[0] /= scene.lenses[lens].numbers[0];
  return out;
}

}  // namespace

std::string lens_memory_to_json(const std::vector<KnownLens>& memory) {
  json lenses = json::array();
  for (const KnownLens& lens : memory)
    lenses.push_back({{"camera", lens.camera},
                      {"width", lens.width},
                      {"height", lens.height},
                      {"lens", lens.lens},
                      {"sigma", lens.sigma}});
  return json{{"format", "cowlcast lens memory"}, {"schema", 1}, {"lenses", lenses}}.dump(1) + "\n";
}

std::vector<KnownLens> lens_memory_from_json(const std::string& text) {
  try {
    const json in = json::parse(text);
    if (!in.is_object() || in.value("format", "") != "cowlcast lens memory" || in.at("schema").get<int>() > 1)
      throw Refusal(
          "This file is not a lens memory of this Cowlcast. Give --lens-memory none, or delete it.");
    std::vector<KnownLens> out;
    for (const json& lens : in.at("lenses")) {
      KnownLens known{lens.at("camera").get<std::string>(), lens.at("width").get<int>(),
                      lens.at("height").get<int>(), lens.at("lens").get<std::array<double, 8>>(),
                      lens.at("sigma").get<std::array<double, 8>>()};
      bool sound = known.lens[0] > 0.0;
      for (size_t k = 0; k < 8; ++k)
        sound =
            sound && std::isfinite(known.lens[k]) && std::isfinite(known.sigma[k]) && known.sigma[k] >= 0.0;
      if (sound) out.push_back(std::move(known));
    }
    return out;
  } catch (const json::exception&) {
    throw Refusal("The lens memory is damaged. Delete it, or give --lens-memory none.");
  }
}

void keep_lens(std::vector<KnownLens>& memory, const KnownLens& lens) {
  for (KnownLens& old : memory)
    if (old.camera == lens.camera && old.width == lens.width && old.height == lens.height) {
      if (lens.sigma[0] < kMuchBetter * old.sigma[0]) old = lens;
      return;
    }
  memory.push_back(lens);
}

std::optional<LensBelief> believed_lens(const std::vector<KnownLens>& memory, const std::string& camera,
                                        int width, int height) {
  const KnownLens* known = camera.empty() ? nullptr : remembered(memory, camera, width, height);
  if (known == nullptr) return std::nullopt;
  const std::array<double, 8> loose = looseness(std::max(width, height));
  LensBelief belief;
  for (size_t k = 0; k < 8; ++k) {
    belief.middle[k] = known->lens[k];
    belief.sigma[k] = std::hypot(known->sigma[k], loose[k]);
  }
  return belief;
}

std::vector<std::string> heed_known_lenses(Scene& scene, const FitNoise& noise,
                                           const std::vector<std::string>& cameras,
                                           const std::vector<KnownLens>& memory) {
  std::vector<std::string> dropped;
  for (size_t i = 0; i < scene.lenses.size() && i < cameras.size(); ++i) {
    const std::optional<LensBelief> belief =
        believed_lens(memory, cameras[i], static_cast<int>(scene.lens_sizes[i].x()),
                      static_cast<int>(scene.lens_sizes[i].y()));
    if (!belief) continue;
    const std::array<double, 8> own = sigmas_of(scene, noise, i);
    bool contradicts = false;
    for (size_t k = 0; k < 8; ++k) {
      const double off = k == 0 ? std::log(scene.lenses[i].numbers[0] / belief->middle[0])
                                : scene.lenses[i].numbers[k] - belief->middle[k];
      contradicts = contradicts || std::abs(off) > kContradicts * std::hypot(own[k], belief->sigma[k]);
    }
    if (!contradicts) {
      Scene with = scene;
      with.beliefs.resize(scene.lenses.size());
      with.beliefs[i] = belief;
      const double before = fit_scene(scene, {FitPart::everything, noise, false, 12}),
                   after = fit_scene(with, {FitPart::everything, noise, false, 25});
      contradicts = after < 0.0 || after - before > kMostPull;
      if (!contradicts) scene = std::move(with);
    }
    if (contradicts)
      dropped.push_back(
          "The lens of " + cameras[i] +
          " does not look as it did when it was remembered (another lens, zoom or crop?), so the "
          "photographs alone were believed.");
  }
  return dropped;
}

std::vector<KnownLens> lenses_worth_keeping(Scene& scene, const FitNoise& noise,
                                            const std::vector<std::string>& cameras) {
  std::vector<KnownLens> out;
  for (size_t i = 0; i < scene.lenses.size() && i < cameras.size(); ++i) {
    if (cameras[i].empty()) continue;
    const double longest = scene.lens_sizes[i].maxCoeff();
    const std::array<double, 8> sigma = sigmas_of(scene, noise, i);
    if (sigma[0] > kWellFocal || std::max(sigma[1], sigma[2]) > kWellCentre * longest || sigma[3] > kWellBend)
      continue;
    out.push_back({cameras[i], static_cast<int>(scene.lens_sizes[i].x()),
                   static_cast<int>(scene.lens_sizes[i].y()), scene.lenses[i].numbers, sigma});
  }
  return out;
}

}  // namespace cowlcast::calibration

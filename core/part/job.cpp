#include "core/part/job.h"

namespace inchwright {

bool JobWithoutParts::operator==(const JobWithoutParts&) const = default;

Job::Job() = default;
Job::Job(const JobWithoutParts& beside) : JobWithoutParts(beside) {}
Job::Job(const Job& other) = default;
Job::Job(Job&& other) noexcept = default;
Job& Job::operator=(const Job& other) = default;
Job& Job::operator=(Job&& other) noexcept = default;
Job::~Job() = default;
bool Job::operator==(const Job&) const = default;

Part::Part() = default;
Part::Part(const Part& other) = default;
Part::Part(Part&& other) noexcept = default;
Part& Part::operator=(const Part& other) = default;
Part& Part::operator=(Part&& other) noexcept = default;
Part::~Part() = default;
bool Part::operator==(const Part&) const = default;

const Feature* Part::feature(std::string_view id) const {
  for (const Feature& one : features) {
    if (one.id == id) return &one;
  }
  return nullptr;
}

const Reading* Part::reading(std::string_view id) const {
  for (const Reading& one : readings) {
    if (one.id == id) return &one;
  }
  return nullptr;
}

const Setup* Part::setup(std::string_view setupName) const {
  for (const Setup& one : setups) {
    if (one.name == setupName) return &one;
  }
  return nullptr;
}

const Part* Job::part(std::string_view partName) const {
  for (const Part& one : parts) {
    if (one.name == partName) return &one;
  }
  return nullptr;
}

const Picture* JobWithoutParts::picture(std::string_view pictureName) const {
  for (const Picture& one : pictures) {
    if (one.name == pictureName) return &one;
  }
  return nullptr;
}

const Gap* JobWithoutParts::gap(std::string_view gapName) const {
  for (const Gap& one : gaps) {
    if (one.name == gapName) return &one;
  }
  return nullptr;
}

}  // namespace inchwright

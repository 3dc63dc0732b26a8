#pragma once

#include <gtest/gtest.h>

#include <initializer_list>
#include <utility>

#include "app/session/work.h"
#include "core/lines/pasted.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {

/// A job with one part, `Plate`, as these lines make it.
inline Job jobOfPlate(const char* lines = "") {
  Part part;
  part.name = "Plate";
  Job job;
  const auto read = applyLines(part, lines, {});
  EXPECT_TRUE(read.ok()) << read.error().text;
  job.parts.push_back(read.ok() ? *read : part);
  return job;
}

/// A desk with a plate on it, bare to begin with, and hands.
class PlateOnDesk : public testing::Test {
 protected:
  void SetUp() override { put(jobOfPlate()); }

  void put(Job job) {
    deskApplication();
    desk.take(std::move(job), {});
  }
  /// Into the strip, a line each.
  void enterLines(std::initializer_list<const char*> lines) {
    for (const char* line : lines) ASSERT_TRUE(work.enter(QString::fromUtf8(line))) << line;
  }

  Desk desk;
  Work work{desk};
};

}  // namespace inchwright::app

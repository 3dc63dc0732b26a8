#pragma once

#include <QDialog>
#include <array>
#include <optional>
#include <vector>

#include "app/session/desk.h"
#include "app/session/shop_lists.h"

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace inchwright::app {

/// The shop I own: whole sets of tools by one tick, single ones typed. It is kept for all jobs, or
/// carried by the one on the desk; either can be undone here. What can't be read changes nothing
/// and stays in its field, with why it was refused.
class ShopSlip : public QDialog {
  Q_OBJECT

 public:
  explicit ShopSlip(Desk& desk, QWidget* parent = nullptr);
  ~ShopSlip() override;

 signals:
  /// The tools for all jobs are now these.
  void shopKept(const Shop& shop);

 private:
  /// One kind of tool.
  struct ListFields {
    QComboBox* said = nullptr;  ///< all usual sizes, only these, none
    std::vector<QCheckBox*> sets;
    QLineEdit* items = nullptr;
  };

  void addList(QGridLayout* grid, ShopList list);
  QWidget* boringFields();
  QWidget* viceFields();
  QLineEdit* line(const QString& name);
  void showNow();
  void showList(ShopList list);
  void takeSaid(ShopList list, int choice);
  void takeSet(ShopList list, std::size_t set, bool on);
  void takeItems(ShopList list);
  void takeSingles();
  void carry(bool on);
  void undo();
  bool carried() const;
  /// What counts on the desk: the job's own, behind it the user's.
  Shop shop() const;
  const Shop& base() const;  ///< the one of the two that is changed here
  /// Takes a changed shop to where it is kept, one step of undo; or says why not.
  void apply(const Result<Shop>& next);
  void refuse(const Error& error);
  ListFields& of(ShopList list) { return lists_[static_cast<std::size_t>(list)]; }

  Desk& desk_;
  bool filling_ = false;
  /// Before each step taken here, the last one last: the user's own as it was, or nothing for a
  /// step of the desk.
  std::vector<std::optional<Shop>> before_;
  std::array<ListFields, kShopLists> lists_;
  QComboBox* boring_;  ///< what the dial counts
  std::array<QLineEdit*, 3> boringSizes_{};
  std::array<QLineEdit*, 3> viceSizes_{};
  QCheckBox* carried_;
  QPushButton* undo_;
  QLabel* told_;
};

}  // namespace inchwright::app

// The program's operator new. Most of what it asks for is small and short-lived: loops of a cell,
// polygons, lines of a page. Blocks of up to `largest` bytes come from pieces of one reserved
// stretch of addresses, each piece for one size, and go back to a list of their size; nothing is
// searched and no block has a header. What is larger is malloc's. Memory of small blocks is kept
// until the program ends. Threads have lists of their own.
#include <sys/mman.h>

#include <array>
#include <atomic>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <new>

namespace {

constexpr std::size_t grain = alignof(std::max_align_t), largest = 512;
constexpr std::size_t piece_size = std::size_t{1} << 16, pieces = std::size_t{1} << 18;

struct Block {
  Block* next;
};

std::atomic<char*> stretch{nullptr};  // null: not reserved yet, or the system has none to give
std::atomic<std::size_t> pieces_used{0};
std::array<std::uint8_t, pieces> size_of_piece;  // of its blocks, in grains

struct Lists {
  std::array<Block*, largest / grain + 1> returned;
  std::array<char*, largest / grain + 1> fresh, fresh_end;
};
thread_local Lists lists;

// Addresses only: pages are the system's until they are written to.
char* reserved() {
  char* known = stretch.load(std::memory_order_acquire);
  if (known != nullptr) return known;
  void* made = mmap(nullptr, pieces * piece_size, PROT_READ | PROT_WRITE,
                    MAP_PRIVATE | MAP_ANONYMOUS | MAP_NORESERVE, -1, 0);
  if (made == MAP_FAILED) return nullptr;
  if (stretch.compare_exchange_strong(known, static_cast<char*>(made))) return stretch.load();
  munmap(made, pieces * piece_size);
  return known;
}

void* from_new_piece(std::size_t grains) {
  char* const base = reserved();
  if (base == nullptr) return nullptr;
  const std::size_t piece = pieces_used.fetch_add(1);
  if (piece >= pieces) {
    pieces_used.store(pieces);
    return nullptr;
  }
  size_of_piece[piece] = static_cast<std::uint8_t>(grains);
  char* const from = base + piece * piece_size;
  lists.fresh[grains] = from + grains * grain;
  lists.fresh_end[grains] = from + piece_size;
  return from;
}

void* small_block(std::size_t grains) {
  if (Block* const block = lists.returned[grains]) {
    lists.returned[grains] = block->next;
    return block;
  }
  char* const from = lists.fresh[grains];
  const std::size_t size = grains * grain;
  if (from == nullptr || size > static_cast<std::size_t>(lists.fresh_end[grains] - from))
    return from_new_piece(grains);
  lists.fresh[grains] = from + size;
  return from;
}

}  // namespace

void* operator new(std::size_t size) {
  if (size <= largest) {
    if (void* const block = small_block(size == 0 ? 1 : (size + grain - 1) / grain)) return block;
  }
  for (;;) {
    if (void* const block = std::malloc(size == 0 ? 1 : size)) return block;
    const std::new_handler handler = std::get_new_handler();
    if (handler == nullptr) throw std::bad_alloc();
    handler();
  }
}

void operator delete(void* pointer) noexcept {
  if (pointer == nullptr) return;
  char* const base = stretch.load(std::memory_order_acquire);
  const auto offset =
      reinterpret_cast<std::uintptr_t>(pointer) - reinterpret_cast<std::uintptr_t>(base);
  if (base == nullptr || offset >= pieces * piece_size) {
    std::free(pointer);
    return;
  }
  Block*& returned = lists.returned[size_of_piece[offset / piece_size]];
  returned = ::new (pointer) Block{returned};
}

void operator delete(void* pointer, std::size_t) noexcept { operator delete(pointer); }

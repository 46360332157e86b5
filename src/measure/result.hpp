// A value or an error that cannot be dropped unseen.
#pragma once

#include "measure/expect.hpp"

#include <utility>
#include <variant>

namespace measure {

template <class T, class E>
class [[nodiscard]] Result {
public:
    Result(T value) : held_(std::in_place_index<0>, std::move(value)) {}
    Result(E error) : held_(std::in_place_index<1>, std::move(error)) {}
    explicit operator bool() const { return held_.index() == 0; }
    const T& operator*() const& {
        expect(held_.index() == 0);
        return *std::get_if<0>(&held_);
    }
    T& operator*() & {
        expect(held_.index() == 0);
        return *std::get_if<0>(&held_);
    }
    T&& operator*() && {
        expect(held_.index() == 0);
        return std::move(*std::get_if<0>(&held_));
    }
    const T* operator->() const { return &**this; }
    T* operator->() {
        expect(held_.index() == 0);
        return std::get_if<0>(&held_);
    }
    const E& error() const {
        expect(held_.index() == 1);
        return *std::get_if<1>(&held_);
    }

private:
    std::variant<T, E> held_;
};

/// The value of a result that carries nothing but success.
struct Done {
    bool operator==(const Done&) const = default;
};

}  // namespace measure

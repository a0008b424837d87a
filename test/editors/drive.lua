-- Opens a script in Neovim, waits until its findings have come, asks for the hover of a word, and writes both
-- as JSON. Environment: SCRIPT, WORD, ANSWER (the file to write).
vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.SCRIPT))

local function findings()
  return vim.tbl_map(function(one)
    return { line = one.lnum + 1, code = one.code or one.user_data.lsp.code, message = one.message }
  end, vim.diagnostic.get(0))
end
vim.wait(20000, function()
  return #findings() > 0
end)

vim.fn.search(vim.env.WORD)
local answers = vim.lsp.buf_request_sync(0, 'textDocument/hover', vim.lsp.util.make_position_params(0, 'utf-16'), 20000)
local hover = ''
for _, answer in pairs(answers or {}) do
  hover = hover .. (answer.result and answer.result.contents.value or '')
end

local file = assert(io.open(vim.env.ANSWER, 'w'))
file:write(vim.json.encode({ findings = findings(), hover = hover }))
file:close()
vim.cmd('qall!')

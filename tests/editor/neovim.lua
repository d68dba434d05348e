-- Opens a story in Neovim with its own language client and prints what it saw as one line of JSON.
-- BATTLEDORE_NODE, BATTLEDORE_SERVER and BATTLEDORE_STORY name the programs and the story.
local seen = {}

local function wait_for(what, condition)
  if not vim.wait(15000, condition, 10) then
    io.stdout:write('{"timeout":"' .. what .. '"}\n')
    vim.cmd('cquit 1')
  end
end

local function messages()
  return vim.tbl_map(function(found)
    return { line = found.lnum + 1, column = found.col + 1, message = found.message, source = found.source }
  end, vim.diagnostic.get(0))
end

vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.BATTLEDORE_STORY))
local started = vim.loop.hrtime()
local client = vim.lsp.start_client({
  name = 'battledore',
  cmd = { vim.env.BATTLEDORE_NODE, vim.env.BATTLEDORE_SERVER, '--stdio' },
  root_dir = vim.fn.fnamemodify(vim.env.BATTLEDORE_STORY, ':h'),
  flags = { debounce_text_changes = 0 },
  -- A notification of our own; a client that knows nothing of it may ignore it.
  handlers = { ['battledore/gauge'] = function(_, gauge) seen.gauge = gauge end },
})
vim.lsp.buf_attach_client(0, client)
wait_for('diagnostics', function() return #vim.diagnostic.get(0) > 0 end)
seen.milliseconds = (vim.loop.hrtime() - started) / 1e6
seen.opened = messages()

local row = vim.fn.search('night')
vim.api.nvim_win_set_cursor(0, { row, vim.fn.col('.') })
local answers = vim.lsp.buf_request_sync(0, 'textDocument/hover', vim.lsp.util.make_position_params(), 5000)
seen.hover = answers[client].result.contents.value

vim.api.nvim_buf_set_lines(0, -1, -1, false, { 'The man might sit.' })
wait_for('a second mark', function() return #vim.diagnostic.get(0) > #seen.opened end)
seen.written = messages()
vim.api.nvim_buf_set_lines(0, -2, -1, false, {})
wait_for('one mark again', function() return #vim.diagnostic.get(0) == #seen.opened end)

vim.lsp.stop_client(client)
wait_for('the end of the server', function() return vim.lsp.client_is_stopped(client) end)
io.stdout:write(vim.fn.json_encode(seen) .. '\n')
vim.cmd('qall!')
